package org.tableweather.schema.climate;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** Saturation pressures by other published formulas, Pa over °C: outside checks, not used by the product. */
final class PublishedCurves {
    /** Sonntag 1990, over water from −100 to 100 °C, in the form for hPa. */
    static final DoubleUnaryOperator SONNTAG = t -> {
        double k = t + 273.15;
        double lnHpa = -6096.9385 / k + 16.635794 - 2.711193e-2 * k + 1.673952e-5 * k * k + 2.433502 * Math.log(k);
        return 100 * Math.exp(lnHpa);
    };

    static final DoubleUnaryOperator BUCK_1981 = magnus(611.21, 17.502, 240.97);
    static final DoubleUnaryOperator BUCK_1996 = t -> 611.21 * Math.exp((18.678 - t / 234.5) * t / (257.14 + t));
    static final DoubleUnaryOperator ALDUCHOV_ESKRIDGE = magnus(610.94, 17.625, 243.04);
    static final DoubleUnaryOperator WMO8 = magnus(611.2, 17.62, 243.12);

    /** By column of {@code saturation_pressure.csv}. */
    static final Map<String, DoubleUnaryOperator> BY_COLUMN = Map.of(
            "wagner_pruss", SaturationCurve.WAGNER_PRUSS::pressurePa,
            "hyland_wexler", SaturationCurve.HYLAND_WEXLER::pressurePa,
            "sonntag", SONNTAG,
            "buck1981", BUCK_1981,
            "buck1996", BUCK_1996,
            "alduchov_eskridge", ALDUCHOV_ESKRIDGE,
            "wmo8", WMO8);

    private PublishedCurves() {}

    private static DoubleUnaryOperator magnus(double atZeroPa, double a, double b) {
        return t -> atZeroPa * Math.exp(a * t / (b + t));
    }
}
