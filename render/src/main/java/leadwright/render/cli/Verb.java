package leadwright.render.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What all commands have: {@code --help}, somewhere for results, somewhere for talk. */
abstract class Verb implements Callable<Integer> {

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help",
            order = Integer.MAX_VALUE)
    private boolean help;

    @Spec
    private CommandSpec spec;

    /** Standard output. */
    final PrintWriter results() {
        return spec.commandLine().getOut();
    }

    /** Standard error. */
    final PrintWriter talk() {
        return spec.commandLine().getErr();
    }
}
