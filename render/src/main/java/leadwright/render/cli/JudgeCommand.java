package leadwright.render.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.Paper;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import leadwright.planner.judge.Judge;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.Previous;
import leadwright.planner.judge.TestRecord;
import leadwright.render.export.PdfExport;
import leadwright.render.export.ReadingsForm;
import leadwright.render.export.RecordCsv;
import leadwright.render.export.RecordJson;
import leadwright.render.export.SafeWriter;
import leadwright.render.sheet.RecordSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** From the readings of a plan to a record. */
@Command(
        name = "judge",
        header = "Judge the readings of a plan and write the record of the test",
        description = {
            "Checks that the readings belong to the plan, corrects them, compares each with its limit under the decision"
                    + " rule, and writes what was measured, by whom, with what, and the verdict. With the plan alone an empty"
                    + " form is printed, to be filled in by hand or in a spreadsheet.",
            "",
            "Examples:",
            "  leadwright judge monitor/plan.json > readings.csv",
            "  leadwright judge monitor/plan.json readings.csv --previous last/record.json --out record"
        },
        exitCodeList = {
            "0:every reading that is due was taken and accepted",
            "1:judged a fail; or void, or not complete (the record says what and why)",
            "2:bad input or wrong use: every problem with file, line and column (no file)",
            "3:a fault of the program (no file)",
            ExitCode.HELP_4
        },
        sortOptions = false)
final class JudgeCommand extends Verb {

    @Parameters(index = "0", paramLabel = "PLAN", description = "the plan (plan.json, plan/1) that was worked by")
    private Path plan;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "READINGS",
            description =
                    "the readings (readings/1): YAML, JSON or CSV; without them an empty form for the plan is printed,"
                            + " to fill in (CSV)")
    private Optional<Path> readings = Optional.empty();

    @Option(
            names = "--previous",
            paramLabel = "RECORD",
            description = "the last record (record.json) of the same device, to compare with")
    private Optional<Path> previous = Optional.empty();

    @Option(
            names = "--decision",
            paramLabel = "RULE",
            converter = DecisionWord.class,
            description = "simple or guard-band; else the house's choice, as the plan says it")
    private Optional<DecisionRule> decision = Optional.empty();

    @Option(
            names = "--on",
            paramLabel = "DATE",
            converter = DateWord.class,
            description = "the day of the readings, as 2027-01-10, where their file does not say it")
    private Optional<LocalDate> on = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "folder for the record; files of the same names in it are replaced. Else a new folder named"
                    + " after the readings")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--formats",
            paramLabel = "FORMAT",
            split = ",",
            converter = FormatWord.class,
            description = "what to write: html, pdf, json, csv; else all")
    private Set<RecordFormat> formats = EnumSet.allOf(RecordFormat.class);

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            converter = PaperWord.class,
            description = "a4 or letter; else the house's")
    private Optional<Paper> paper = Optional.empty();

    @Option(names = "--json", description = "print the record (record/1) and write nothing")
    private boolean json;

    /** What a record can be written as. */
    enum RecordFormat {
        HTML,
        PDF,
        JSON,
        CSV
    }

    /** Reads a format by its word, in large or small letters. */
    static final class FormatWord implements ITypeConverter<RecordFormat> {
        @Override
        public RecordFormat convert(String word) {
            for (RecordFormat each : RecordFormat.values()) {
                if (each.name().equalsIgnoreCase(word)) {
                    return each;
                }
            }
            throw new TypeConversionException(
                    "there is no format '" + word + "' of a record; there are: html, pdf, json, csv");
        }
    }

    @Override
    public Integer call() {
        List<String> problems = new ArrayList<>();
        List<String> assumed = new ArrayList<>();
        Optional<PlannedTest> planned = read(plan, PlanFile::read, problems, assumed);
        if (readings.isEmpty()) {
            return form(planned, problems);
        }
        Optional<Readings> taken = read(readings.get(), ReadingsReader::read, problems, assumed);
        Optional<Previous> last = previous.flatMap(file -> read(file, Previous::read, problems, assumed));
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
        Outcome<TestRecord> outcome =
                Judge.judge(planned.orElseThrow(), taken.orElseThrow(), new Judge.Options(decision, on, last));
        outcome.problems().stream().map(Problem::text).forEach(problems::add);
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
        return write(outcome.found().orElseThrow(), assumed);
    }

    private int form(Optional<PlannedTest> planned, List<String> problems) {
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
        results().print(ReadingsForm.of(planned.orElseThrow()));
        return ExitCode.DONE;
    }

    private static <T> Optional<T> read(
            Path file, BiFunction<String, byte[], Outcome<T>> reader, List<String> problems, List<String> assumed) {
        try {
            Outcome<T> outcome = reader.apply(file.toString(), Inputs.bytes(file));
            outcome.problems().stream().map(Problem::text).forEach(problems::add);
            if (outcome instanceof Outcome.Read<T> read) {
                assumed.addAll(Inputs.inOrder(read.assumed()));
            }
            return outcome.found();
        } catch (BadInput e) {
            problems.addAll(e.lines());
            return Optional.empty();
        }
    }

    private int write(TestRecord record, List<String> assumed) {
        PrintWriter results = results();
        PrintWriter talk = talk();
        int code = record.result() == TestRecord.Result.PASS ? ExitCode.DONE : ExitCode.FALLS_SHORT;
        if (json) {
            results.print(RecordJson.of(record));
            RecordReport.lines(record, assumed).forEach(line -> talk.println(Terminal.plain(line)));
            return code;
        }
        SortedMap<String, byte[]> files = files(record);
        Path folder = OutFolder.choose(out, readings.orElseThrow(), "record", files);
        try {
            refuseInputs(folder, files);
            SafeWriter.write(folder, files);
        } catch (SafeWriter.CannotWriteException e) {
            talk.println(Terminal.plain(String.valueOf(e.getMessage())));
            return ExitCode.CANNOT_WRITE;
        }
        RecordReport.lines(record, assumed).forEach(line -> results.println(Terminal.plain(line)));
        results.println(Terminal.plain("Written to " + folder + ": " + String.join(", ", files.keySet())));
        return code;
    }

    /** What was read from stays as it is, also where it lies in the folder of the record. */
    private void refuseInputs(Path folder, SortedMap<String, byte[]> files) {
        for (String name : files.keySet()) {
            Path target = folder.resolve(name);
            for (Path input : inputs()) {
                if (same(target, input)) {
                    throw new BadInput(
                            input + " is read and would be replaced by the record; choose another folder with --out");
                }
            }
        }
    }

    private static boolean same(Path target, Path input) {
        try {
            return Files.exists(target) && Files.isSameFile(target, input);
        } catch (IOException e) {
            // What cannot be looked at is not ours to replace.
            return true;
        }
    }

    private List<Path> inputs() {
        List<Path> inputs = new ArrayList<>(List.of(plan));
        readings.ifPresent(inputs::add);
        previous.ifPresent(inputs::add);
        return inputs;
    }

    private SortedMap<String, byte[]> files(TestRecord record) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        if (formats.contains(RecordFormat.JSON)) {
            files.put("record.json", bytes(RecordJson.of(record)));
        }
        if (formats.contains(RecordFormat.CSV)) {
            files.put("record.csv", bytes(RecordCsv.of(record)));
        }
        if (formats.contains(RecordFormat.HTML) || formats.contains(RecordFormat.PDF)) {
            String page =
                    RecordSheet.xhtml(record, paper.orElse(record.plan().house().paper()));
            if (formats.contains(RecordFormat.HTML)) {
                files.put("record.html", bytes(page));
            }
            if (formats.contains(RecordFormat.PDF)) {
                files.put("record.pdf", PdfExport.pdf(page, Optional.of(record.date())));
            }
        }
        return files;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Reads a decision rule by its word. */
    static final class DecisionWord implements ITypeConverter<DecisionRule> {
        @Override
        public DecisionRule convert(String word) {
            for (DecisionRule each : DecisionRule.values()) {
                if (each.word().equals(word)) {
                    return each;
                }
            }
            throw new TypeConversionException("'" + word + "' is no decision rule; there are: simple, guard-band");
        }
    }

    /** Reads a paper size by its word. */
    static final class PaperWord implements ITypeConverter<Paper> {
        @Override
        public Paper convert(String word) {
            for (Paper each : Paper.values()) {
                if (each.word().equals(word)) {
                    return each;
                }
            }
            throw new TypeConversionException("'" + word + "' is no paper size; there are: a4, letter");
        }
    }
}
