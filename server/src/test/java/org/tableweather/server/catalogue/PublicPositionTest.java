package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.Room;

class PublicPositionTest {

    private static Room at(OptionalDouble latitude, OptionalDouble longitude) {
        return new Room(
                "r", Optional.empty(), Optional.empty(), latitude, longitude, OptionalDouble.empty(), List.of());
    }

    @Test
    void isRoundedToATenthOfADegree() {
        Room exact = at(OptionalDouble.of(59.91273), OptionalDouble.of(-10.74609));
        assertThat(PublicPosition.isExact(exact)).isTrue();
        Room rounded = PublicPosition.rounded(exact);
        assertThat(rounded.latitude()).hasValue(59.9);
        assertThat(rounded.longitude()).hasValue(-10.7);
        assertThat(PublicPosition.isExact(rounded)).isFalse();
    }

    @Test
    void nothingStaysNothing() {
        Room unknown = at(OptionalDouble.empty(), OptionalDouble.empty());
        assertThat(PublicPosition.isExact(unknown)).isFalse();
        assertThat(PublicPosition.rounded(unknown)).isEqualTo(unknown);
    }
}
