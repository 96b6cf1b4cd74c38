package leadwright.render.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leadwright.planner.Plan;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.edition.PracticeKey;
import leadwright.render.edition.PracticeSheet;
import leadwright.render.export.PdfExport;
import leadwright.render.paper.Document;
import leadwright.render.sheet.DocumentPage;

/** A class set: a document for each sheet, to be handed out one by one, and the trainer's key apart from them. */
final class ClassSet {

    static final String KEY = "answer-key";

    private static final Pattern OURS = Pattern.compile("(sheet-[0-9]+|" + KEY + ")\\.(html|pdf)");

    private ClassSet() {}

    /** Sheets of so many seeds from the first on; shorter, down to empty, where the seeds give fewer. */
    static List<Practice> sheets(Rehearsal rehearsal, long first, int number) {
        List<Practice> sheets = new ArrayList<>();
        for (long seed = first; seed < first + number; seed++) {
            rehearsal.sheet(seed).ifPresent(sheets::add);
        }
        return sheets;
    }

    /** Contents by file name. */
    static SortedMap<String, byte[]> files(Plan plan, List<Practice> sheets, Set<DocumentFormat> formats) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        for (Practice practice : sheets) {
            write("sheet-" + practice.seed(), PracticeSheet.of(plan, practice), formats, files);
        }
        write(KEY, PracticeKey.of(plan, sheets), formats, files);
        return files;
    }

    private static void write(
            String name, Document document, Set<DocumentFormat> formats, SortedMap<String, byte[]> files) {
        String page = DocumentPage.xhtml(document);
        if (formats.contains(DocumentFormat.HTML)) {
            files.put(name + ".html", page.getBytes(StandardCharsets.UTF_8));
        }
        if (formats.contains(DocumentFormat.PDF)) {
            files.put(name + ".pdf", PdfExport.pdf(page, Optional.empty()));
        }
    }

    /** Files of another set in a folder, which the new key would say nothing of. */
    static List<String> leftovers(Path folder, Set<String> names) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> there = Files.list(folder)) {
            return there.map(file -> file.getFileName().toString())
                    .filter(name -> OURS.matcher(name).matches() && !names.contains(name))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new BadInput(folder + ": cannot be read: " + e.getMessage());
        }
    }
}
