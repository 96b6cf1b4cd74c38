package leadwright.render.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import picocli.CommandLine;

/** Where the program starts. */
public final class Main {

    private Main() {}

    /** Runs a command line and leaves with its exit code. */
    public static void main(String[] arguments) {
        System.setProperty("java.awt.headless", "true");
        HeadStart.give(arguments);
        PrintWriter out = writer(new FileOutputStream(FileDescriptor.out));
        PrintWriter err = writer(new FileOutputStream(FileDescriptor.err));
        int code = run(arguments, out, err);
        System.exit(code);
    }

    /**
     * Runs a command line.
     *
     * @return the exit code, see {@code leadwright --help}
     */
    public static int run(String[] arguments, PrintWriter out, PrintWriter err) {
        return run(arguments, out, err, Planner::plan);
    }

    /** With a planner of the caller's: tests see with it what the program does with each outcome. */
    static int run(String[] arguments, PrintWriter out, PrintWriter err, Function<Request, Outcome> planner) {
        CommandLine line = Leadwright.line(arguments.length == 0 ? "" : arguments[0], planner);
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpWidth(100);
        line.setParameterExceptionHandler(new WrongUse());
        // A file may be called anything, also something that begins with @.
        line.setExpandAtFiles(false);
        line.setExecutionExceptionHandler((thrown, command, parsed) -> explain(thrown, err));
        line.getSubcommands().values().stream()
                .filter(each -> each.getCommand() instanceof Verb)
                .forEach(Main::layHelpOut);
        layHelpOut(line);
        int code;
        try {
            code = line.execute(arguments.length == 0 ? new String[] {"--help"} : arguments);
        } catch (Error e) {
            // Out of memory or a damaged program: a script must not take it for a kit that falls short.
            code = explain(e, err);
        }
        if (out.checkError()) {
            err.println("Standard output could not be written; what it shows is not whole.");
            code = ExitCode.CANNOT_WRITE;
        }
        err.flush();
        return code;
    }

    private static int explain(Throwable thrown, PrintWriter err) {
        if (thrown instanceof BadInput bad) {
            List<String> lines = bad.lines();
            lines.forEach(each -> err.println(Terminal.plain(each)));
            err.println((lines.size() == 1 ? "1 problem" : lines.size() + " problems") + "; nothing was written.");
            return ExitCode.BAD_INPUT;
        }
        err.println("A fault of the program, not of your files; nothing was written. Please report this:");
        thrown.printStackTrace(err);
        return ExitCode.FAULT;
    }

    /** The same help page for every command. */
    private static void layHelpOut(CommandLine command) {
        boolean top = !command.getSubcommands().isEmpty();
        command.getCommandSpec()
                .usageMessage()
                .synopsisHeading("%nUsage: ")
                .abbreviateSynopsis(!top)
                .descriptionHeading("%n")
                .parameterListHeading("%n")
                .optionListHeading(top ? "%n" : "")
                .commandListHeading("%nCommands:%n")
                .exitCodeListHeading("%nExit codes:%n");
    }

    /** UTF-8 and line feeds everywhere, so that the same run gives the same bytes. */
    private static PrintWriter writer(OutputStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), false) {
            @Override
            public void println() {
                write('\n');
            }
        };
    }
}
