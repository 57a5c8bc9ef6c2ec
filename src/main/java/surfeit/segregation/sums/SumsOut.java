package surfeit.segregation.sums;

import java.util.Collection;
import java.util.Optional;
import surfeit.element.Element;

/** Takes the fields of the sums one after another, each with a word for what it is. Not thread-safe. */
public interface SumsOut {

    /** A name; those of groups and particles say what the numbers after them belong to. */
    void text(String what, String text);

    void count(String what, long count);

    void real(String what, double value);

    /** Something that says how the sums were come by and may differ between equal ones. */
    void aside(boolean flag);

    default void yesOrNo(String what, boolean yes) {
        count(what, yes ? 1 : 0);
    }

    default void reals(String what, double[] values) {
        for (double value : values) {
            real(what, value);
        }
    }

    /** An element with its weight, so that sums made with another table of weights are not taken for these. */
    default void element(Element element) {
        text("element", element.symbol());
        real("atomic weight", element.atomicWeight());
    }

    default void elements(Collection<Element> elements) {
        count("elements", elements.size());
        elements.forEach(this::element);
    }

    default void texts(String what, Collection<String> texts) {
        count(what, texts.size());
        texts.forEach(text -> text(what, text));
    }

    default void optionalReal(String what, Optional<Double> value) {
        yesOrNo(what, value.isPresent());
        value.ifPresent(real -> real(what, real));
    }

    default void optionalText(String what, Optional<String> value) {
        yesOrNo(what, value.isPresent());
        value.ifPresent(text -> text(what, text));
    }
}
