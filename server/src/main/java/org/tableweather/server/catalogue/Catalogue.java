package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/** What a contribution does to the catalogue, each in the contribution's own transaction. */
@ApplicationScoped
public class Catalogue {
    private final DataSource database;

    Catalogue(DataSource database) {
        this.database = database;
    }

    /**
     * Begins to take a contribution in.
     *
     * @param connection in the current transaction; of no other use until the intake has ended
     * @param contributionId whose rows
     * @param accountId whose rooms
     */
    public Intake intake(Connection connection, long contributionId, long accountId) {
        return new Intake(connection, contributionId, accountId);
    }

    /** Publishes all sessions of a contribution. */
    @Transactional(TxType.MANDATORY)
    public void publish(long contributionId) {
        change("UPDATE session SET published = true WHERE contribution_id = ?", contributionId);
    }

    /** Takes all sessions of a contribution back; their rows stay, and their content may be contributed again. */
    @Transactional(TxType.MANDATORY)
    public void withdraw(long contributionId) {
        change("UPDATE session SET published = false, withdrawn = true WHERE contribution_id = ?", contributionId);
    }

    /** After large changes: has the block range index know the new rows. Nothing waits for it, nothing depends on it. */
    public void settle() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("SELECT brin_summarize_new_values('trial_session')");
        } catch (SQLException e) {
            throw new IllegalStateException("the index over the trials cannot be brought up to date", e);
        }
    }

    /** Names the state of what is published: another text after every change, in every database. */
    public String state() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT instance, generation FROM catalogue_state")) {
            row.next();
            return row.getString(1).substring(0, 8) + "-" + row.getLong(2);
        } catch (SQLException e) {
            throw new IllegalStateException("the state of the catalogue cannot be read", e);
        }
    }

    private void change(String sql, long contributionId) {
        try (Connection connection = database.getConnection();
                PreparedStatement update = connection.prepareStatement(sql);
                Statement state = connection.createStatement()) {
            update.setLong(1, contributionId);
            update.executeUpdate();
            state.executeUpdate("UPDATE catalogue_state SET generation = generation + 1");
        } catch (SQLException e) {
            throw new IllegalStateException("the sessions of contribution " + contributionId + " cannot be changed", e);
        }
    }
}
