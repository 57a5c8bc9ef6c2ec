package surfeit.rival;

import java.util.Locale;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.xray.Absorption;
import surfeit.xray.DepthProfile;
import surfeit.xray.Family;
import surfeit.xray.Line;
import surfeit.xray.LineChoice;
import surfeit.xray.LineTable;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;

/** A line an element was read from, with its depth profile and absorption in the nominal alloy. */
record LineSignal(Line line, DepthProfile profile, double chi) {

    static LineSignal of(Line line, Material alloy, double beamEnergyKev, double takeOffDeg, ProfileCache profiles) {
        return new LineSignal(line, profiles.profile(alloy, line, beamEnergyKev), Absorption.chi(line, alloy,
            takeOffDeg));
    }

    /** The line that was read: the reported one where the table knows it, else the one an analyst would choose. */
    static Optional<Line> lineOf(Element element, Optional<String> reported, double beamEnergyKev) {
        return reported.flatMap(text -> named(element, text))
            .or(() -> LineChoice.at(element, beamEnergyKev).chosen());
    }

    /** The main line of the family a text names: {@code Au La}, {@code Lα1}, {@code L series} and {@code L} alike. */
    static Optional<Line> named(Element element, String text) {
        String plain = text.strip();
        if (plain.length() > element.symbol().length() && plain.startsWith(element.symbol())
            && !Character.isLetter(plain.charAt(element.symbol().length()))) {
            plain = plain.substring(element.symbol().length());
        }
        String letters = plain.toUpperCase(Locale.ROOT).replaceAll("[^KLM]", "");
        if (letters.isEmpty()) {
            return Optional.empty();
        }
        Family family = Family.ofEdge(letters.substring(0, 1));
        return LineTable.standard().lines(element).stream().filter(line -> line.family() == family).findFirst();
    }
}
