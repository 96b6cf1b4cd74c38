package leadwright.render.cli;

import picocli.CommandLine.Option;

/** {@code --help} for a command. */
final class HelpOption {

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    private boolean asked;
}
