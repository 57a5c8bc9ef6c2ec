package surfeit.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.element.Element;
import surfeit.element.UnknownElementException;
import surfeit.report.MeasuredWords;
import surfeit.report.TextTable;

/** Lists the alloys that {@code --alloy} takes, so that nobody needs a service to find the id of one. */
@Command(name = "alloys", mixinStandardHelpOptions = true,
    description = "List the alloys that --alloy takes, all or those that hold every element named.")
final class AlloysCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "ELEMENT", arity = "0..*", description = "symbols such as Ag Cu")
    private List<String> symbols = new ArrayList<>();

    @Override
    public Integer call() throws IOException {
        List<Element> elements = symbols.stream().map(this::element).toList();
        List<Alloy> alloys = AlloyCatalogue.packaged().all().stream()
            .filter(alloy -> alloy.nominal().elements().containsAll(elements)).toList();
        PrintWriter out = spec.commandLine().getOut();
        if (alloys.isEmpty()) {
            out.println("No alloy of the catalogue holds " + String.join(", ", symbols) + " together; state --nominal.");
            return Main.DONE;
        }
        TextTable table = new TextTable(List.of("alloy", "melts at", "nominal at%"));
        for (Alloy alloy : alloys) {
            table.row(List.of(alloy.id(), alloy.temperature().map(at -> at.celsius() + " C, " + at.kind()).orElse(""),
                MeasuredWords.nominal(alloy.nominal().resolve())));
        }
        table.writeTo(out);
        out.flush();
        return Main.DONE;
    }

    private Element element(String symbol) {
        try {
            return Element.of(symbol);
        } catch (UnknownElementException e) {
            throw new CommandLine.ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
