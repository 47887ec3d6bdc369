package org.stepwell.platform.security;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.DataSourceUtils;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionDefinition;
import org.stepwell.platform.store.TransactionProof;

/** Begins each transaction by proving to the database for whom it works, for that transaction alone. */
final class DistrictTransactions extends JdbcTransactionManager {
    DistrictTransactions(DataSource dataSource) {
        super(dataSource);
    }

    @Override
    protected void doBegin(Object transaction, TransactionDefinition definition) {
        super.doBegin(transaction, definition);
        Optional<String> subject = DistrictScope.subject();
        if (subject.isEmpty()) {
            return;
        }
        DataSource dataSource = obtainDataSource();
        Connection connection = DataSourceUtils.getConnection(dataSource);
        try (PreparedStatement set = connection.prepareStatement(
                "select set_config('stepwell.for', ?, true), set_config('stepwell.proof', ?, true)")) {
            set.setString(1, subject.get());
            set.setString(2, TransactionProof.of(connection, subject.get()));
            set.execute();
        } catch (SQLException failed) {
            doCleanupAfterCompletion(transaction);
            throw new CannotCreateTransactionException("for whom the transaction works could not be proved", failed);
        } finally {
            DataSourceUtils.releaseConnection(connection, dataSource);
        }
    }
}
