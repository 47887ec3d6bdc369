package org.stepwell.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.SignInEvent.What;

/** Writes down what happens at sign-ins. */
@Repository
class SignInEvents {
    /** So that whoever tries passwords from many addresses cannot fill the store. */
    private static final int MOST_REFUSED_A_DAY = 200;

    private final JdbcClient jdbc;
    private final AccountStore accounts;
    private final TransactionTemplate transaction;

    SignInEvents(JdbcClient jdbc, AccountStore accounts, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.accounts = accounts;
        this.transaction = transaction;
    }

    void note(SignedIn adult, What what, HttpServletRequest request) {
        note(adult.districtId(), adult.adultId(), what, request.getRemoteAddr(),
                Device.named(request.getHeader("User-Agent")));
    }

    void note(int districtId, UUID adultId, What what, String address, String device) {
        DistrictScope.in(districtId, () -> transaction.execute(status -> jdbc.sql("""
                insert into sign_in_event (district_id, adult_id, what, address, device)
                select :district, :adult, :what, left(:address, 64), left(:device, 64)
                where :what <> 'refused' or (select count(*) from sign_in_event where adult_id = :adult
                  and what = 'refused' and happened_at > now() - interval '1 day') < :most""")
                .param("district", districtId).param("adult", adultId).param("what", what.code())
                .param("address", address).param("device", device).param("most", MOST_REFUSED_A_DAY).update()));
    }

    /** Notes a refusal beside the request, whose time must not tell whether the name is known. */
    void refused(String name, HttpServletRequest request) {
        String address = request.getRemoteAddr();
        String device = Device.named(request.getHeader("User-Agent"));
        Thread.ofVirtual().start(() -> accounts.place(name.strip().toLowerCase(Locale.ROOT)).ifPresent(place ->
                note(place.districtId(), place.adultId(), What.REFUSED, address, device)));
    }

    /** Those of an adult, newest first; within a transaction of the district. */
    List<SignInEvent> of(UUID adultId, int most) {
        return jdbc.sql("select what, address, device, happened_at from sign_in_event where adult_id = :adult"
                + " order by happened_at desc limit :most").param("adult", adultId).param("most", most)
                .query((row, n) -> new SignInEvent(What.valueOf(row.getString(1).toUpperCase(Locale.ROOT)),
                        row.getString(2), row.getString(3), row.getTimestamp(4).toInstant())).list();
    }
}
