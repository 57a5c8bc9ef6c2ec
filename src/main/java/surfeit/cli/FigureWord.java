package surfeit.cli;

import java.util.Arrays;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import surfeit.report.figure.AnswerFigure;

/** The word that says which figure is wanted. */
final class FigureWord {
    private FigureWord() {
    }

    /** @param word null where none was said */
    static AnswerFigure of(CommandSpec spec, String word, InterpretCommand.Format format) {
        if (word == null) {
            return AnswerFigure.FACTORS;
        }
        if (format != InterpretCommand.Format.svg) {
            throw new ParameterException(spec.commandLine(), "--figure goes with --format svg, got --format " + format
                + ".");
        }
        return Arrays.stream(AnswerFigure.values()).filter(figure -> figure.word().equals(word)).findFirst()
            .orElseThrow(() -> new ParameterException(spec.commandLine(),
                "--figure is factors, spots, contrasts or depths, got \"" + word + "\"."));
    }
}
