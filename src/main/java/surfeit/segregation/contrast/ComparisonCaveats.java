package surfeit.segregation.contrast;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.sums.GroupKey;
import surfeit.spot.Judgement;

/** What a reader must know about the comparison of two samples as a whole. */
public record ComparisonCaveats(ComparedSample a, ComparedSample b, List<Element> onlyInA, List<Element> onlyInB,
                                boolean sameParticles) {
    /** From so many equal names on, a lab may have meant the same particles: pairs need three. */
    private static final int SAME_NAMES_FROM = 3;

    public List<Caveat> of(SampleReading readA, SampleReading readB, GroupMatching matching,
                           List<Optional<GroupContrast>> contrasts) {
        List<Caveat> caveats = new ArrayList<>();
        empty(a.name(), readA, caveats);
        empty(b.name(), readB, caveats);
        elements(caveats);
        judgement(caveats);
        particles(readA, readB, caveats);
        calibration(contrasts, caveats);
        unlabelled(matching, readA, readB, caveats);
        left(matching, caveats);
        return List.copyOf(caveats);
    }

    private static void empty(String name, SampleReading reading, List<Caveat> caveats) {
        if (reading.spotCount() == 0) {
            caveats.add(Caveat.warning("no-spots", name + " has no spots of the specimen; nothing is gone or has appeared."));
        }
    }

    private void elements(List<Caveat> caveats) {
        if (!onlyInA.isEmpty() || !onlyInB.isEmpty()) {
            String words = Stream.of(left(onlyInA, a.name()), left(onlyInB, b.name())).filter(text -> !text.isEmpty())
                .collect(Collectors.joining("; "));
            caveats.add(Caveat.note("elements-left-out", "Both samples were closed over the elements that both "
                + "nominals have; left out: " + words + "."));
        }
    }

    private static String left(List<Element> elements, String name) {
        return elements.isEmpty() ? "" : elements.stream().map(Element::symbol).collect(Collectors.joining(", "))
            + " (only in the nominal of " + name + ")";
    }

    private void judgement(List<Caveat> caveats) {
        Judgement first = a.sample().judgement();
        Judgement second = b.sample().judgement();
        if (first.marginOddsRatio() != second.marginOddsRatio() || first.alpha() != second.alpha()) {
            caveats.add(Caveat.note("stricter-settings", "The samples are judged with different margins or risks; the "
                + "smaller of each counts here."));
        }
        if (a.sample().accuracyClass() != b.sample().accuracyClass()) {
            caveats.add(Caveat.note("accuracy-differs", a.name() + " is " + a.sample().accuracyClass().words() + ", "
                + b.name() + " " + b.sample().accuracyClass().words()
                + "; each counts with its own calibration error."));
        }
    }

    private void particles(SampleReading readA, SampleReading readB, List<Caveat> caveats) {
        Set<String> common = new TreeSet<>(names(readA));
        common.retainAll(names(readB));
        if (sameParticles) {
            caveats.add(Caveat.note("same-particles", "Particles of the same name are taken as the very same ones "
                + "measured again, and compared pair by pair from three on (" + common.size()
                + " have the same name)."));
        } else if (common.size() >= SAME_NAMES_FROM) {
            caveats.add(Caveat.note("particle-names-coincide", common.size() + " particles have the same name in both "
                + "samples; they are taken as different particles. If they are the very same ones measured again, say "
                + "so: pairs show smaller changes."));
        }
    }

    private static Set<String> names(SampleReading reading) {
        Set<String> names = new HashSet<>();
        reading.analyses().forEach(analysis -> analysis.particles().first().particles()
            .forEach(particle -> names.add(particle.name())));
        names.remove(GroupKey.UNNAMED_PARTICLE);
        return names;
    }

    /** Said once: how much of the calibration error is in the differences. */
    private static void calibration(List<Optional<GroupContrast>> contrasts, List<Caveat> caveats) {
        List<GroupContrast> made = contrasts.stream().flatMap(Optional::stream).toList();
        if (made.isEmpty()) {
            return;
        }
        long together = made.stream().filter(contrast -> contrast.correlation() > 0).count();
        if (together == made.size()) {
            caveats.add(Caveat.note("same-session", "Both samples were measured in the same session, so most of the "
                + "calibration error is common to both and cancels (correlation 0.9, judgement)."));
        } else {
            String which = together == 0 ? "The samples were" : "Some features were";
            caveats.add(Caveat.note("calibration-does-not-cancel", which + " not measured in a common session at one "
                + "beam energy: the calibration error of each is in the difference."));
        }
    }

    private void unlabelled(GroupMatching matching, SampleReading readA, SampleReading readB, List<Caveat> caveats) {
        if (!matching.gone().isEmpty() && readB.names().contains(GroupKey.UNLABELLED)) {
            caveats.add(unlabelled(b.name(), matching.gone()));
        }
        if (!matching.appeared().isEmpty() && readA.names().contains(GroupKey.UNLABELLED)) {
            caveats.add(unlabelled(a.name(), matching.appeared()));
        }
    }

    private static Caveat unlabelled(String name, List<GroupAnalysis> missing) {
        return Caveat.warning("unlabelled-spots", "Spots of " + name + " without a feature may show what looks missing "
            + "there: " + words(missing) + ".");
    }

    private void left(GroupMatching matching, List<Caveat> caveats) {
        if (!matching.leftOfA().isEmpty() || !matching.leftOfB().isEmpty()) {
            String words = Stream.of(leftOf(matching.leftOfA(), a.name()), leftOf(matching.leftOfB(), b.name()))
                .filter(text -> !text.isEmpty()).collect(Collectors.joining("; "));
            caveats.add(Caveat.note("no-counterpart", "Not compared, because the other sample has this feature only at "
                + "another beam energy: " + words + "."));
        }
    }

    private static String leftOf(List<GroupAnalysis> groups, String name) {
        return groups.isEmpty() ? "" : words(groups) + " of " + name;
    }

    private static String words(List<GroupAnalysis> groups) {
        return groups.stream().map(group -> "\"" + group.data().name() + "\"").collect(Collectors.joining(", "));
    }
}
