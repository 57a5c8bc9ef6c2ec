package surfeit.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/** What a command of the program printed and its exit code, run within the test. */
record CommandRun(int code, String out, String err) {

    static CommandRun of(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[arguments.length];
        for (int i = 0; i < words.length; i++) {
            words[i] = arguments[i].toString();
        }
        CommandLine line = Main.commandLine(words).setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true));
        int code = line.execute(words);
        return new CommandRun(code, out.toString(), err.toString());
    }
}
