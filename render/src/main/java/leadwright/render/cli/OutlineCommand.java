package leadwright.render.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import leadwright.catalog.table.ShippedFiles;
import leadwright.render.export.SafeWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists the outlines, prints one, or writes one to a new file. */
@Command(
        name = "outline",
        header = "List the device descriptions to start from, or write one",
        description = {
            "Without a name: the list. With a name: the outline on standard output, or in a new file with --out."
                    + " An outline is a device description with the usual parts of its kind; every line is to be"
                    + " compared with the device itself.",
            "",
            "Example:",
            "  leadwright outline ward-monitor --out our-monitor.yaml"
        },
        exitCodeList = {ExitCode.HELP_0, ExitCode.HELP_2, ExitCode.HELP_4})
final class OutlineCommand extends Verb {

    @Parameters(paramLabel = "NAME", arity = "0..1", description = "an outline from the list")
    private Optional<String> name = Optional.empty();

    @Option(names = "--out", paramLabel = "FILE", description = "write it to this file, which may not exist yet")
    private Optional<Path> file = Optional.empty();

    @Override
    public Integer call() {
        PrintWriter out = results();
        if (name.isEmpty()) {
            if (file.isPresent()) {
                throw new BadInput("--out needs the name of an outline; there are: " + all());
            }
            ShippedFiles.outlines().forEach(each -> out.println(String.format("%-30s %s", each, about(each))));
            return ExitCode.DONE;
        }
        file.ifPresent(named -> Inputs.named("--out", named));
        if (!ShippedFiles.outlines().contains(name.get())) {
            throw new BadInput("there is no outline '" + name.get() + "'; there are: " + all());
        }
        byte[] text = ShippedFiles.outline(name.get());
        if (file.isEmpty()) {
            out.print(new String(text, StandardCharsets.UTF_8));
            return ExitCode.DONE;
        }
        return write(file.get(), text, out);
    }

    private int write(Path target, byte[] text, PrintWriter out) {
        try {
            Files.write(target, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            talk().println(Terminal.plain(target + " exists and is left as it is; name a new file"));
            return ExitCode.CANNOT_WRITE;
        } catch (IOException e) {
            talk().println(Terminal.plain("Nothing was written: " + SafeWriter.words(e)));
            return ExitCode.CANNOT_WRITE;
        }
        out.println(Terminal.plain(
                "Wrote " + target + ". Compare every line with the device, then: leadwright plan " + target));
        return ExitCode.DONE;
    }

    private static String all() {
        return String.join(", ", ShippedFiles.outlines());
    }

    /** The first sentence of the comment that the outline begins with. */
    private static String about(String outline) {
        String text = new String(ShippedFiles.outline(outline), StandardCharsets.UTF_8);
        String first = text.lines().findFirst().orElse("").replaceFirst("^#\\s*", "");
        int end = first.indexOf(". ");
        return end < 0 ? first.replaceFirst("\\.$", "") : first.substring(0, end);
    }
}
