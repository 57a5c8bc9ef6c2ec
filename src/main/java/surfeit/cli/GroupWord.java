package surfeit.cli;

import java.util.Arrays;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import surfeit.segregation.answer.GroupBy;

/** The word that says how spots are grouped. */
final class GroupWord {
    private GroupWord() {
    }

    static GroupBy of(CommandSpec spec, String word) {
        return Arrays.stream(GroupBy.values()).filter(by -> by.word().equals(word)).findFirst()
            .orElseThrow(() -> new ParameterException(spec.commandLine(), "--by is feature, particle or sample, got \"" + word + "\"."));
    }
}
