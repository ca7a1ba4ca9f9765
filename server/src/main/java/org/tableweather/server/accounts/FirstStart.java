package org.tableweather.server.accounts;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.OwnerOnlyFile;

/** Writes the operator's first token where only the owner of the data folder can read it. */
@ApplicationScoped
class FirstStart {
    private static final Duration LIFETIME = Duration.ofDays(365);

    private final Accounts accounts;
    private final DataFolder folder;

    FirstStart(Accounts accounts, DataFolder folder) {
        this.accounts = accounts;
        this.folder = folder;
    }

    /** The file is written before the transaction ends: a token in the database is always a token in hand. */
    @Transactional
    void onStart(@Observes StartupEvent event) {
        accounts.firstOperatorToken(LIFETIME).ifPresent(this::handOver);
    }

    private void handOver(IssuedToken token) {
        Path file = folder.operatorToken();
        try {
            OwnerOnlyFile.write(file, token.token());
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write the operator's token to " + file, e);
        }
        System.out.println("The operator's first token is in " + file + ", readable by its owner alone");
    }
}
