package leadwright.render.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine;
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
        versionProvider = Leadwright.Version.class)
final class Leadwright {

    private static final Map<String, Function<Function<Request, Outcome>, Verb>> VERBS = verbs();

    private static Map<String, Function<Function<Request, Outcome>, Verb>> verbs() {
        Map<String, Function<Function<Request, Outcome>, Verb>> verbs = new LinkedHashMap<>();
        verbs.put("plan", PlanCommand::new);
        verbs.put("judge", planner -> new JudgeCommand());
        verbs.put("compare", planner -> new CompareCommand());
        verbs.put("kit", KitCommand::new);
        verbs.put("rehearse", RehearseCommand::new);
        verbs.put("check", planner -> new CheckCommand());
        verbs.put("outline", planner -> new OutlineCommand());
        verbs.put("rules", planner -> new RulesCommand());
        return verbs;
    }

    /**
     * The program with the command that the first word names, or with all of them where it names none: to look through
     * the annotations of one command takes a fraction of the time that all take.
     *
     * @param planner what the command {@code plan} asks
     */
    static CommandLine line(String firstWord, Function<Request, Outcome> planner) {
        CommandLine line = new CommandLine(new Leadwright());
        boolean all = !VERBS.containsKey(firstWord);
        VERBS.forEach((name, verb) -> {
            if (all || name.equals(firstWord)) {
                line.addSubcommand(name, verb.apply(planner));
            }
        });
        if (all) {
            line.addSubcommand(new HelpCommand());
            line.addSubcommand(new GenerateCompletion());
        }
        return line;
    }

    /** What {@code --version} prints. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"leadwright " + Planner.VERSION};
        }
    }
}
