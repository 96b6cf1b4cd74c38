package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import leadwright.render.cli.Main;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples of the public file formats plan as they stand, together and with the program's own kit. */
class FormatsExamplesTest {
    private static final Path EXAMPLES =
            Path.of("..", "catalog", "src", "test", "resources", "leadwright", "catalog", "read");

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theyPlan(boolean ownKit, @TempDir Path folder) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        List<String> arguments = new ArrayList<>(
                List.of("plan", example("device").toString(), "--formats", "svg,json", "--out", folder.toString()));
        if (!ownKit) {
            arguments.addAll(List.of(
                    "--kit",
                    example("kit").toString(),
                    "--house",
                    example("house").toString()));
        }
        int code = Main.run(arguments.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
        assertThat(code).as(out + "\n" + err).isZero();
        assertThat(folder.resolve("plan.json")).exists();
    }

    private static Path example(String kind) {
        return EXAMPLES.resolve("format-" + kind + ".yaml");
    }
}
