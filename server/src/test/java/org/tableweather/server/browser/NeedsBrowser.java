package org.tableweather.server.browser;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A test with a real browser. Where there is none it is left out with a loud word, unless a browser is required, as it is
 * where CI runs: then the test fails.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@ExtendWith(NeedsBrowser.Condition.class)
@interface NeedsBrowser {

    /** Looks for the browser. */
    final class Condition implements ExecutionCondition {
        private static final String MISSING =
                "no chromium or no chromedriver: apt-get install chromium chromium-driver,"
                        + " or name them in TABLEWEATHER_CHROMIUM and TABLEWEATHER_CHROMEDRIVER";

        @Override
        public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
            boolean found =
                    Browser.chromium().isPresent() && Browser.chromedriver().isPresent();
            if (found || isRequired()) {
                // without a browser the test itself fails
                return ConditionEvaluationResult.enabled(found ? "there is a browser" : MISSING);
            }
            System.err.println("BROWSER TESTS LEFT OUT: " + MISSING);
            return ConditionEvaluationResult.disabled(MISSING);
        }

        private static boolean isRequired() {
            return System.getenv("CI") != null || "required".equals(System.getenv("TABLEWEATHER_BROWSER"));
        }
    }
}
