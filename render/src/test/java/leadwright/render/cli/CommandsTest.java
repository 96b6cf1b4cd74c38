package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.table.ShippedFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands that plan nothing, and what holds for all of them. */
class CommandsTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"plan", "judge", "compare", "rehearse", "check", "outline", "rules"})
    void everyCommandExplainsItselfWithAnExampleAndItsExitCodes(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("\nUsage: leadwright " + command)
                .containsPattern("Examples?:\n  leadwright " + command)
                .contains("Exit codes:")
                .doesNotContain("\u001b");
        assertThat(run.out().lines().mapToInt(String::length).max().orElse(0)).isLessThanOrEqualTo(100);
    }

    @Test
    void withoutArgumentsTheHelpNamesEveryCommandAndExitCode() {
        Run run = Run.of();
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains(
                        "plan ",
                        "judge ",
                        "compare ",
                        "rehearse ",
                        "check ",
                        "outline ",
                        "rules ",
                        "generate-completion");
        assertThat(run.out()).containsPattern("(?s)0 .*1 .*2 .*3 .*4 ");
    }

    @Test
    void versionNamesTheProgram() {
        assertThat(Run.of("--version").out()).matches("leadwright \\d+\\.\\d+\\.\\d+\n");
    }

    @Test
    void completionIsGenerated() {
        assertThat(Run.of("generate-completion").out()).contains("complete -F", "_complete_leadwright");
    }

    @Test
    void anUnknownCommandOrOptionIsWrongUse() {
        assertThat(Run.of("pln").code()).isEqualTo(ExitCode.BAD_INPUT);
        Run run = Run.of("rules", "--jsn");
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("--jsn");
    }

    /** One line with what would be right, and where there is more; no help page, no class names. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    plan d --on 2027-02-30        | --on: '2027-02-30' is no day of the calendar; write year-month-day, as 2027-01-10
                    plan d --on monday            | --on: 'monday' is no day of the calendar; write year-month-day, as 2027-01-10
                    plan d --occasion monthly     | there are: acceptance, after-repair, recurrent, after-loan, incident
                    plan d --formats svg,doc      | --formats: there is no format 'doc'; there are: svg, png, html, pdf, docx, json, csv
                    plan d --rules iec-1          | there are: iec-62353-2014, iec-60601-1-ed3
                    plan d --json=maybe           | --json takes no value
                    plan d e                      | 'e' is one argument too many
                    plan d --edtion bench         | there is no option '--edtion'; there are: --edition, --formats, --help
                    rehearse d --seed seven       | --seed: 'seven' is no seed; write a whole number from 0 to 999999999
                    rehearse d --seed 1.5         | --seed: '1.5' is no seed; write a whole number from 0 to 999999999
                    rehearse d --sheets 0         | --sheets: '0' is no number of sheets; write a whole number from 1 to 60
                    rehearse d --sheets 61        | --sheets: '61' is no number of sheets; write a whole number from 1 to 60
                    rehearse                      | DEVICE
                    plan                          | DEVICE
                    check                         | FILE
                    outline nope                  | there are: defibrillator-monitor
                    rules iec-1                   | there are: iec-62353-2014, iec-60601-1-ed3
                    frob                          | there is no command 'frob'; there are: plan, judge, compare, kit, rehearse, check, outline, rules
                    """)
    void aBadValueGivesOneClearLine(String line, String says) {
        Run run = Run.of(line.split(" +"));
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(says).doesNotContain("java.", "Exception", "Usage");
        assertThat(run.err()
                        .lines()
                        .filter(each -> !each.endsWith("nothing was written."))
                        .filter(each -> !each.startsWith("d: ")))
                .hasSize(1);
    }

    @Test
    void anOutlineThatCannotBeWrittenIsSaidInPlainWords() {
        Run nowhere = Run.of(
                "outline",
                "ward-monitor",
                "--out",
                folder.resolve("none/a.yaml").toString());
        assertThat(nowhere.code()).isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(nowhere.err())
                .contains("Nothing was written: ")
                .contains("a.yaml")
                .doesNotContain("Exception", "\tat ");
        Run unnamed = Run.of("outline", "ward-monitor", "--out", "");
        assertThat(unnamed.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(unnamed.err()).startsWith("the name given for --out is empty");
    }

    @Test
    void checkReadsEverySampleByItsKind() {
        Run run = Run.of(
                "check",
                "../samples/brindlewick-ward-monitor.yaml",
                "../samples/k1-marrowgate-bench.yaml",
                "../samples/ambersluice-house.yaml");
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("no errors; device 'Brindlewick ward monitor', 5 applied parts, 15 patient connections")
                .contains("no errors; kit 'Marrowgate bench', 6 jacks")
                .contains("no errors; house rules for iec-62353-2014");
    }

    @Test
    void checkReportsTheProblemsOfAllFilesWithTheirPlaces() throws IOException {
        Path device =
                Files.writeString(folder.resolve("d.yaml"), "leadwright: device/1\nname: A\nprotection: class-7\n");
        Path kit = Files.writeString(folder.resolve("k.yaml"), "leadwright: kit/1\nnam: B\n");
        Path none = folder.resolve("none.yaml");
        Run run = Run.of("check", device.toString(), kit.toString(), none.toString(), folder.toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err())
                .containsPattern("d\\.yaml:3:13: .*class-7")
                .containsPattern("k\\.yaml:2:1: .*nam")
                .contains("none.yaml: there is no such file")
                .contains(folder + ": cannot be read: it is a folder")
                .containsPattern("\\d+ problems; nothing was written\\.\n$");
    }

    @Test
    void messagesCannotSteerTheTerminal() throws IOException {
        Path device = folder.resolve("d.yaml");
        Files.writeString(device, "leadwright: device/1\nname: A\n\"\\e[31mred\\u202e\": 1\n");
        assertThat(Run.of("check", device.toString()).err())
                .doesNotContain("\u001b")
                .doesNotContain("\u202e");
    }

    @Test
    void outlinesAreListedPrintedAndWrittenOnce() throws IOException {
        Run list = Run.of("outline");
        assertThat(list.out().lines().toList()).hasSameSizeAs(ShippedFiles.outlines());
        assertThat(list.out()).contains("A ward monitor to start from");
        String printed = Run.of("outline", "ward-monitor").out();
        assertThat(printed).contains("leadwright: device/1");
        Path file = folder.resolve("mine.yaml");
        assertThat(Run.of("outline", "ward-monitor", "--out", file.toString()).code())
                .isZero();
        assertThat(file).hasContent(printed);
        Files.writeString(file, "mine");
        Run again = Run.of("outline", "ward-monitor", "--out", file.toString());
        assertThat(again.code()).isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(again.err()).contains("left as it is");
        assertThat(file).hasContent("mine");
        assertThat(Run.of("outline", "no-such").code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void anOutlineCanBePlannedFromAtOnce() {
        for (String name : ShippedFiles.outlines()) {
            Path file = folder.resolve(name + ".yaml");
            Run.of("outline", name, "--out", file.toString());
            assertThat(Run.of("check", file.toString()).code()).as(name).isZero();
        }
    }

    @Test
    void aSystemIsCheckedWithItsMembers() throws IOException {
        Run run = Run.of("check", "../samples/pennywhistle-trolley.yaml");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("system 'Pennywhistle pump trolley', 5 devices on one outlet");
        Path alone = folder.resolve("trolley.yaml");
        Files.copy(Path.of("../samples/pennywhistle-trolley.yaml"), alone);
        Run missing = Run.of("check", alone.toString());
        assertThat(missing.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(missing.err()).contains("pennywhistle-pump.yaml").contains("there is no such file");
    }

    @Test
    void ruleSetsAreListedAndEveryLimitIsShownWithItsClause() {
        assertThat(Run.of("rules").out()).contains("iec-62353-2014").contains("iec-60601-1-ed3");
        for (String id : RuleSets.builtIn().ids()) {
            Run run = Run.of("rules", id);
            assertThat(run.code()).isZero();
            RuleSets.builtIn()
                    .find(id)
                    .orElseThrow()
                    .limits()
                    .forEach(limit -> assertThat(run.out().lines())
                            .anyMatch(line -> line.matches("  (at most|at least) .*")
                                    && line.contains(limit.value().text())
                                    && line.contains("  " + limit.basis().clause() + "  ")
                                    && line.contains("  " + limit.basis().mark() + "  ")
                                    && line.endsWith("  " + limit.id())));
        }
        Run wrong = Run.of("rules", "iec-1");
        assertThat(wrong.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(wrong.err()).contains("there are: iec-62353-2014");
    }

    @Test
    void ruleSetsAreJsonToo() throws IOException {
        for (List<String> arguments :
                List.of(List.of("rules", "--json"), List.of("rules", "iec-62353-2014", "--json"))) {
            String json = Run.of(arguments.toArray(String[]::new)).out();
            try (JsonParser parser = new JsonFactory().createParser(json)) {
                while (parser.nextToken() != null) {
                    assertThat(parser.currentToken()).isNotNull();
                }
            }
            assertThat(json).contains("\"id\" : \"iec-62353-2014\"");
        }
    }
}
