package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.rehearse.Practice;
import leadwright.render.paper.Document;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;

/** The trainer's key to a class set: all answers at a glance, then each sheet explained. */
public final class PracticeKey {

    /** Up to so many readings against the nearest wrong choice make a sheet hard, and up to so many a middling one. */
    private static final int HARD = 1;

    private static final int MIDDLING = 4;

    private PracticeKey() {}

    public static Document of(Plan plan, List<Practice> set) {
        PracticeWords words = new PracticeWords(plan);
        DocumentBuilder page = new DocumentBuilder();
        page.section("The answers");
        page.notice(Words.strong("For the trainer: not to be handed out. ")
                .then("The readings of all sheets are invented; nothing here is a record of a device."));
        page.say("Plan " + plan.fingerprint()
                + ". A sheet's number is the seed from which it was made: the same seed, the same files"
                + " and the same program give the same sheet.");
        page.say(
                "Each sheet has one choice that explains its readings. That no other choice does was found by solving the circuit"
                        + " of every reading with every choice. Hard is a sheet on which one reading alone rules out the wrong choice"
                        + " that lies nearest, middling one on which two to four do.");
        List<List<Words>> rows = new ArrayList<>();
        for (Practice practice : set) {
            rows.add(List.of(
                    Words.strong(String.valueOf(practice.seed())),
                    Words.strong(practice.right()),
                    Words.of(words.sentence(practice.rightChoice())),
                    Words.of(difficulty(practice))));
        }
        page.grid(List.of("Sheet", "Right", "What it is", "How hard"), List.of(12, 10, 62, 16), rows);
        for (Practice practice : set) {
            page.section("Answer to sheet " + practice.seed());
            PracticeAnswer.write(words, practice, page);
        }
        String name = plan.device().name();
        return new Document(
                name,
                "Practice sheets, answer key for the trainer",
                "Answer key to the practice sheets for " + name + ": invented readings, no record",
                plan.house().paper() == Paper.LETTER,
                Editions.brief(name) + ", answer key, plan " + words.words().fingerprint(),
                words.words()
                        .say(
                                "For training of qualified persons, under supervision. Defers to the device's own instructions and local"
                                        + " codes."),
                PracticeWords.MARK,
                page.blocks());
    }

    /** By the number of readings that rule the nearest wrong choice out. */
    static String difficulty(Practice practice) {
        int fewest = practice.fewestAgainst();
        return fewest <= HARD ? "hard" : fewest <= MIDDLING ? "middling" : "easy";
    }
}
