package leadwright.render.cli;

import leadwright.planner.Planner;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;

/** The program; its commands do the work. */
@Command(
        name = "leadwright",
        header = "Plans, draws and prints the electrical-safety test of a medical device on a given bench",
        description = {
            "From a device description, a bench kit and a rule set: how to connect the device, in which order to take"
                    + " the readings, and the papers for the bench.",
            "",
            "Example:",
            "  leadwright plan samples/brindlewick-ward-monitor.yaml --out monitor"
        },
        footer = {
            "",
            "Results go to standard output, talk to standard error. NO_COLOR is respected. Nothing is asked of the"
                    + " network. For qualified persons; the device's own instructions and local codes stand above"
                    + " every plan."
        },
        exitCodeList = {ExitCode.HELP_0, ExitCode.HELP_1, ExitCode.HELP_2, ExitCode.HELP_3, ExitCode.HELP_4},
        mixinStandardHelpOptions = true,
        versionProvider = Leadwright.Version.class,
        subcommands = {
            PlanCommand.class,
            CheckCommand.class,
            OutlineCommand.class,
            RulesCommand.class,
            HelpCommand.class,
            GenerateCompletion.class
        })
final class Leadwright {

    /** What {@code --version} prints. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"leadwright " + Planner.VERSION};
        }
    }
}
