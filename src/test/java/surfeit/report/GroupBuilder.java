package surfeit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.segregation.answer.Scope;

/** Puts an invented group together; its scope follows from the number of particles unless it is one spot. */
public final class GroupBuilder {
    private final String name;
    private final long spotCount;
    private final List<String> particles;
    private final List<ElementFinding> elements = new ArrayList<>();
    private final List<Rival> rivals = new ArrayList<>();
    private final List<Caveat> caveats = new ArrayList<>();
    private List<Element> notMeasured = List.of();
    private Optional<List<Element>> explanationSet = Optional.empty();
    private List<ForeignElement> foreign = List.of();
    private Optional<ReferenceUse> reference = Optional.empty();
    private Optional<PhaseReading> phases = Optional.empty();

    public GroupBuilder(String name, long spotCount, String... particles) {
        this.name = name;
        this.spotCount = spotCount;
        this.particles = List.of(particles);
    }

    public GroupBuilder element(FindingBuilder finding) {
        elements.add(finding.build());
        return this;
    }

    public GroupBuilder element(String symbol, double nominal, OutcomeBuilder outcome) {
        return element(FindingBuilder.finding(symbol, nominal, outcome));
    }

    public GroupBuilder element(String symbol, double low, double high, OutcomeBuilder outcome) {
        return element(FindingBuilder.finding(symbol, low, high, outcome));
    }

    public GroupBuilder rival(Rival rival) {
        rivals.add(rival);
        return this;
    }

    public GroupBuilder caveat(Caveat caveat) {
        caveats.add(caveat);
        return this;
    }

    public GroupBuilder notMeasured(String... symbols) {
        notMeasured = elementsOf(symbols);
        return this;
    }

    public GroupBuilder explanationSet(String... symbols) {
        explanationSet = Optional.of(elementsOf(symbols));
        return this;
    }

    public GroupBuilder foreign(ForeignElement... elements) {
        foreign = List.of(elements);
        return this;
    }

    public GroupBuilder reference(ReferenceUse use) {
        reference = Optional.of(use);
        return this;
    }

    public GroupBuilder phases(PhaseReading reading) {
        phases = Optional.of(reading);
        return this;
    }

    private static List<Element> elementsOf(String... symbols) {
        return Stream.of(symbols).map(Element::of).toList();
    }

    public GroupFinding build() {
        Scope scope = particles.size() > 1 ? Scope.PARTICLES : spotCount > 1 ? Scope.THIS_PARTICLE : Scope.THIS_SPOT;
        return new GroupFinding(GroupBy.FEATURE, name, spotCount, particles, OptionalDouble.of(15),
            List.of("2026-11-20-a"), scope,
            particles.size() == 2, elements, notMeasured, explanationSet, Optional.empty(), Optional.empty(),
            foreign, reference, rivals, caveats, phases, Optional.empty());
    }
}
