package org.tableweather.schema.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference is {@link Double#parseDouble}, which rounds correctly. */
class DecimalsTest {
    private final Decimals decimals = new Decimals();

    private void assertExact(String text) {
        assertThat(Double.doubleToRawLongBits(decimals.parse(text)))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text.replace(',', '.'))));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0",
                "+1",
                "007",
                "1.",
                ".5",
                "-.25",
                "21,5",
                "19.890000000000001",
                "1e3",
                "1E-3",
                "-2.5e+2",
                "9007199254740993",
                "9007199254740992",
                "0.1",
                "0.30000000000000004",
                "123456789012345678",
                "1234567890123456789012345678901234567890",
                "0.000000000000000000001",
                "4.9e-324",
                "1.7976931348623157e308",
                "2.2250738585072011e-308",
                "6.2500000000000000e+00",
                "0.000000000000000001"
            })
    void readsExactly(String text) {
        assertExact(text);
    }

    @Test
    void readsRandomDecimalsExactly() {
        Random random = new Random(7);
        for (int i = 0; i < 200_000; i++) {
            int digits = 1 + random.nextInt(19);
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "-" : "");
            int mark = random.nextInt(digits + 1);
            for (int d = 0; d < digits; d++) {
                if (d == mark) {
                    text.append('.');
                }
                text.append((char) ('0' + random.nextInt(10)));
            }
            assertExact(text.toString());
        }
    }

    @Test
    void readsRandomDoublesBack() {
        Random random = new Random(8);
        for (int i = 0; i < 100_000; i++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                assertThat(decimals.parse(Double.toString(value))).isEqualTo(value);
            }
            double plain = random.nextGaussian() * 100;
            assertThat(decimals.parse(String.format(Locale.ROOT, "%.3f", plain)))
                    .isEqualTo(Double.parseDouble(String.format(Locale.ROOT, "%.3f", plain)));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                "+",
                ".",
                ",",
                "1.2.3",
                "1,234.5",
                "1.234,5",
                "12 000",
                "1e",
                "1e+",
                "e5",
                "0x1p3",
                "1d",
                "1f",
                "NaN",
                "Infinity",
                "-Infinity",
                "1e999",
                "21.5 C",
                "٣",
                "1_000",
                "--1",
                "1-"
            })
    void refusesWhatIsNoNumber(String text) {
        assertThat(decimals.parse(text)).isNaN();
    }

    @Test
    void countsDecimalMarks() {
        decimals.parse("1.5");
        decimals.parse("2,5");
        decimals.parse("2,5e3");
        decimals.parse("3");
        decimals.parse("x,5");

        assertThat(decimals.points()).isEqualTo(1);
        assertThat(decimals.commas()).isEqualTo(2);
    }
}
