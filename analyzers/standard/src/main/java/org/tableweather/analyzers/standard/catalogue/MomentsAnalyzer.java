package org.tableweather.analyzers.standard.catalogue;

import java.util.Set;
import org.tableweather.analyzers.spi.ColumnarAnalyzer;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.SessionRecord;

/** Concludes over the moments of sessions, by shot and pattern. */
public interface MomentsAnalyzer extends ColumnarAnalyzer<SessionMoments> {

    @Override
    default Class<SessionMoments> summaryType() {
        return SessionMoments.class;
    }

    @Override
    default Set<TrialNumber> numbers() {
        return Measure.NUMBERS;
    }

    @Override
    default SessionMoments summarise(SessionRecord session, TrialColumns trials) {
        return SessionMomentsBuilder.of(session, trials);
    }
}
