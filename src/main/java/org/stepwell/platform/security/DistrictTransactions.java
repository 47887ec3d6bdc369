package org.stepwell.platform.security;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.OptionalInt;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.DataSourceUtils;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionDefinition;

/** Begins each transaction by telling the database its district, for that transaction alone. */
final class DistrictTransactions extends JdbcTransactionManager {
    DistrictTransactions(DataSource dataSource) {
        super(dataSource);
    }

    @Override
    protected void doBegin(Object transaction, TransactionDefinition definition) {
        super.doBegin(transaction, definition);
        OptionalInt district = DistrictScope.current();
        if (district.isEmpty()) {
            return;
        }
        DataSource dataSource = obtainDataSource();
        Connection connection = DataSourceUtils.getConnection(dataSource);
        try (PreparedStatement set = connection.prepareStatement("select set_config('stepwell.district', ?, true)")) {
            set.setString(1, Integer.toString(district.getAsInt()));
            set.execute();
        } catch (SQLException failed) {
            doCleanupAfterCompletion(transaction);
            throw new CannotCreateTransactionException("the district of the transaction could not be set", failed);
        } finally {
            DataSourceUtils.releaseConnection(connection, dataSource);
        }
    }
}
