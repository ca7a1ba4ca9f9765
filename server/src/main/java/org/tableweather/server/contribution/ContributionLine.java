package org.tableweather.server.contribution;

import java.util.Optional;
import org.tableweather.server.web.Words;

/**
 * A contribution as pages show it, every figure already in words.
 *
 * @param id its number here
 * @param title in words
 * @param contributor the name they chose
 * @param licence SPDX id
 * @param state where it stands
 * @param meaning of the state
 * @param received when the archive came, universal time
 * @param decided when it was decided
 * @param withdrawn when it was taken back; a dash when it was not
 * @param reason why it was taken back; empty when it was not, or nothing was stated
 * @param rooms how many
 * @param sessions how many
 * @param trials how many
 * @param bytes length of the archive
 * @param sha256 of the archive
 * @param invented whether it is made up for demonstration
 * @param gone whether it was taken back
 */
record ContributionLine(
        long id,
        String title,
        String contributor,
        String licence,
        String state,
        String meaning,
        String received,
        String decided,
        String withdrawn,
        String reason,
        String rooms,
        String sessions,
        String trials,
        String bytes,
        String sha256,
        boolean invented,
        boolean gone) {

    static ContributionLine of(ContributionView view) {
        return new ContributionLine(
                view.id(),
                view.title().orElse("Contribution " + view.id()),
                view.contributor().orElse(Words.NOTHING),
                view.licence().orElse(Words.NOTHING),
                view.state().schemaName(),
                meaning(view.state()),
                Words.minute(Optional.of(view.receivedAt())),
                Words.minute(view.decidedAt()),
                Words.minute(view.withdrawnAt()),
                view.withdrawalReason().orElse(""),
                Words.count(view.rooms()),
                Words.count(view.sessions()),
                Words.count(view.trials()),
                Words.bytes(view.bytes()),
                view.sha256(),
                view.invented(),
                view.state() == State.WITHDRAWN);
    }

    private static String meaning(State state) {
        return switch (state) {
            case RECEIVED -> "The archive is here and is being looked at.";
            case CHECKED -> "The checks passed. A curator has to accept it before it is pooled.";
            case ACCEPTED -> "It is pooled: its attempts are in every figure of these pages.";
            case REFUSED -> "The checks refuse it. Nothing of it is kept; mended, it can be handed over again.";
            case WITHDRAWN -> "It was taken back and is not pooled any more. What was released before stays as it was.";
        };
    }
}
