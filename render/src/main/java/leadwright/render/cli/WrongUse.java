package leadwright.render.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** A command line that cannot be understood: one line that says what is wrong and what would be right. */
final class WrongUse implements IParameterExceptionHandler {

    @Override
    public int handleParseException(ParameterException wrong, String[] arguments) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter talk = command.getErr();
        String more = command.getCommandSpec().qualifiedName() + " --help";
        talk.println(Terminal.plain(oneLine(words(wrong)) + " (see '" + more + "')"));
        return ExitCode.BAD_INPUT;
    }

    private static String words(ParameterException wrong) {
        if (wrong instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched);
        }
        String message = String.valueOf(wrong.getMessage());
        if (message.endsWith("is not a boolean")) {
            return message.replaceFirst(".*option '([^']*)'.*", "$1 takes no value");
        }
        return message.replaceFirst("^Invalid value for option '([^']*)'(?: \\([^)]*\\))?: ", "$1: ");
    }

    private static String unmatched(UnmatchedArgumentException wrong) {
        CommandLine command = wrong.getCommandLine();
        String word = wrong.getUnmatched().get(0);
        if (wrong.isUnknownOption()) {
            return "there is no option '" + word + "'; there are: "
                    + command.getCommandSpec().options().stream()
                            .map(CommandLine.Model.OptionSpec::longestName)
                            .sorted()
                            .collect(Collectors.joining(", "));
        }
        if (command.getSubcommands().isEmpty()) {
            return "'" + word + "' is one argument too many";
        }
        return "there is no command '" + word + "'; there are: "
                + String.join(", ", List.copyOf(command.getSubcommands().keySet()));
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\R", " ");
    }
}
