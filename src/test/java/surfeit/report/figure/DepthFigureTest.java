package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.SignalDepth;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

class DepthFigureTest {
    private static final Material SILVER_COPPER =
        Material.byVolumes(Map.of(Element.of("Ag"), 0.719, Element.of("Cu"), 0.281));

    private static SignalDepths depths(Double... beamEnergiesKev) {
        return SignalDepths.of(SignalDepthQuery.of(SILVER_COPPER, List.of(beamEnergiesKev)), new ProfileCache());
    }

    @Test
    void every_line_is_named_with_the_depth_of_half_its_signal() {
        Picture picture = Picture.of(DepthFigure.of(depths(15.0), "Ag-Cu").svg()).isProper();
        assertThat(picture.allText()).contains("beam 15 keV", "Ag La", "Cu Ka (marginally excited)", "Cu La",
            "half above ",
            "depth below the surface, nm (log)", "signal from above, %", "take-off angle 35\u00b0",
            "Ag 71.9, Cu 28.1 mass%");
        assertThat(picture.description()).contains("At 15 keV, Cu La half above ", "nine tenths above ");
    }

    @Test
    void the_curve_crosses_half_where_the_depth_figures_say() {
        SignalDepths depths = depths(15.0);
        Picture picture = Picture.of(DepthFigure.of(depths, "Ag-Cu").svg());
        List<SignalDepth> lines = depths.byBeamEnergy().get(0).lines().stream()
            .sorted((one, other) -> Double.compare(one.emitted().depth50Nm().value(), other.emitted().depth50Nm()
            .value())).toList();
        double half = picture.heightOf("50");
        for (int i = 0; i < lines.size(); i++) {
            double[] points = Picture.points(picture.drawn("polyline", "s-text").get(i));
            double crossing = Double.NaN;
            for (int p = 2; p < points.length; p += 2) {
                if (points[p - 1] >= half && points[p + 1] < half) {
                    double share = (points[p - 1] - half) / (points[p - 1] - points[p + 1]);
                    crossing = points[p - 2] + share * (points[p] - points[p - 2]);
                }
            }
            double expected = picture.onLogAxis(lines.get(i).emitted().depth50Nm().value(), "10", "100");
            assertThat(crossing).as(lines.get(i).line().label()).isCloseTo(expected, within(0.5));
        }
    }

    @Test
    void each_beam_energy_has_a_panel_over_one_axis_up_to_four() {
        Picture picture = Picture.of(DepthFigure.of(depths(5.0, 10.0, 15.0, 20.0, 25.0, 30.0), "Ag-Cu").svg())
            .isProper();
        assertThat(picture.allText()).contains("beam 5 keV", "beam 20 keV", "Drawn are the first 4 of 6 beam energies.")
            .doesNotContain("beam 25 keV");
    }

    @Test
    void elements_without_a_line_are_told() {
        SignalDepths depths = SignalDepths.of(SignalDepthQuery.of(SILVER_COPPER, List.of(2.0)), new ProfileCache());
        Picture picture = Picture.of(DepthFigure.of(depths, "Ag-Cu").svg()).isProper();
        assertThat(picture.allText()).contains("At 2 keV no line can be used of Ag");
    }
}
