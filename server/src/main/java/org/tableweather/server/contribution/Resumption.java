package org.tableweather.server.contribution;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.util.List;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;
import org.tableweather.server.accounts.Caller;

/** On start: throws away what cannot go on, goes on with what can, while the server already answers. */
@ApplicationScoped
class Resumption {
    private static final Logger LOG = Logger.getLogger(Resumption.class);

    private final Incoming incoming;
    private final Register register;
    private final Contributions contributions;
    private final ManagedExecutor executor;

    Resumption(Incoming incoming, Register register, Contributions contributions, ManagedExecutor executor) {
        this.incoming = incoming;
        this.register = register;
        this.contributions = contributions;
        this.executor = executor;
    }

    void onStart(@Observes StartupEvent event) throws IOException {
        incoming.tidy();
        List<String> received = register.received();
        if (!received.isEmpty()) {
            LOG.infof("going on with %d contributions that were received before the last end", received.size());
            executor.execute(() -> received.forEach(this::resume));
        }
    }

    private void resume(String sha256) {
        try {
            State state =
                    contributions.resume(Caller.SERVER, sha256).contribution().state();
            LOG.infof("contribution %s is %s", sha256, state.schemaName());
        } catch (IOException | RuntimeException e) {
            LOG.errorf(e, "contribution %s stays received: send it again", sha256);
        }
    }
}
