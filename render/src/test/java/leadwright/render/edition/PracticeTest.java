package leadwright.render.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.Effect;
import leadwright.planner.mistake.Fault;
import leadwright.planner.mistake.FaultKind;
import leadwright.planner.mistake.Faults;
import leadwright.planner.mistake.ProofKind;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.mistake.Slips;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.DocumentLines;
import leadwright.render.SamplePlans;
import leadwright.render.paper.Document;
import leadwright.render.sheet.SmallPlan;
import leadwright.render.sheet.Vocabulary;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The words of practice sheets and of their key. */
class PracticeTest {

    private static Plan monitor;
    private static Rehearsal rehearsal;

    @BeforeAll
    static void plan() {
        monitor = SamplePlans.of("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014");
        rehearsal = Rehearsal.of(monitor, Situation.ORDINARY);
    }

    @ParameterizedTest
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014"
    })
    void everyCauseIsAWholeSentenceOfItsOwn(String device, String kit, String rules) {
        Plan plan = SamplePlans.of(device, kit, rules);
        CauseWords words = new CauseWords(plan, Vocabulary.of(plan));
        List<Cause> causes = new ArrayList<>(Slips.of(plan));
        causes.addAll(Faults.of(plan));
        Set<String> ids = new HashSet<>();
        plan.device().connections().forEach(each -> ids.add(each.name()));
        Set<String> said = new HashSet<>();
        for (Cause cause : causes) {
            String sentence = words.sentence(cause);
            assertThat(sentence)
                    .matches("(?s)[A-Z].*[^ .]\\.")
                    .doesNotContain("jack-", "  ")
                    .doesNotContainPattern("\\bnull\\b");
            assertThat(List.of(sentence.split("[ ,()]")))
                    .as(sentence)
                    .doesNotContainAnyElementsOf(
                            ids.stream().filter(id -> id.contains(".")).toList());
            assertThat(said.add(sentence)).as(sentence).isTrue();
        }
        assertThat(causes).isNotEmpty();
    }

    @Test
    void namesAreThoseOfThePlansOtherPapers() {
        CauseWords words = new CauseWords(monitor, Vocabulary.of(monitor));
        Slip wire =
                new Slip("x", SlipKind.WRONG_BUNDLE, Optional.empty(), List.of("ecg.C6", "jack 3"), new Effect.None());
        assertThat(words.sentence(wire)).isEqualTo("The wire C6 of ECG is plugged into the bundle on jack 3.");
        Fault parts = new Fault("x", FaultKind.PART_TO_PART, List.of("ecg", "spo2"), new Effect.None());
        assertThat(words.sentence(parts)).isEqualTo("The isolation between ECG and Pulse oximetry is broken.");
        assertThat(words.sentence(Optional.empty())).startsWith("Nothing is wrong");
    }

    @Test
    void everyKindIsExplainedAndNoValueStandsInIt() {
        List<CauseExplained> all = new ArrayList<>();
        for (SlipKind kind : SlipKind.values()) {
            Slip slip = new Slip("x", kind, Optional.empty(), List.of(), new Effect.None());
            all.add(CauseExplained.of(slip));
            String proof = ProofWords.of(monitor, Optional.of(slip));
            boolean known = List.of(ProofKind.values()).stream().anyMatch(each -> each.exposes(kind));
            assertThat(proof).startsWith(known ? "It would have shown by " : "");
        }
        for (FaultKind kind : FaultKind.values()) {
            Fault fault = new Fault("x", kind, List.of(), new Effect.None());
            all.add(CauseExplained.of(fault));
            assertThat(ProofWords.of(monitor, Optional.of(fault))).startsWith("None");
        }
        assertThat(all).doesNotHaveDuplicates().allSatisfy(each -> {
            assertThat(each.circuit()).isNotBlank().endsWith(".").doesNotContainPattern("[0-9]");
            assertThat(each.readings()).isNotBlank().endsWith(".").doesNotContainPattern("[0-9]");
            assertThat(each.bench()).isNotBlank().endsWith(".").doesNotContainPattern("[0-9]");
        });
    }

    @Test
    void theSheetHasSeedFingerprintAndNoticeAndDoesNotTellTheAnswer() {
        for (long seed = 1; seed <= 30; seed++) {
            Practice practice = rehearsal.sheet(seed).orElseThrow();
            Document sheet = PracticeSheet.of(monitor, practice);
            String text = String.join("\n", DocumentLines.of(sheet));
            assertThat(sheet.mark()).isEqualTo("PRACTICE: not a record");
            assertThat(text)
                    .contains("sheet " + seed + " of plan "
                            + monitor.fingerprint().substring(0, 8))
                    .contains("The readings are invented")
                    .doesNotContain("Right is");
            PracticeSheet.sentences(monitor, practice)
                    .forEach(sentence -> assertThat(text).containsOnlyOnce(sentence));
        }
    }

    @Test
    void theKeyGivesEveryAnswerAndAReadingAgainstEveryOtherChoice() {
        List<Practice> set = new ArrayList<>();
        for (long seed = 1; seed <= 30; seed++) {
            set.add(rehearsal.sheet(seed).orElseThrow());
        }
        List<String> lines = DocumentLines.of(PracticeKey.of(monitor, set));
        assertThat(String.join("\n", lines)).contains(monitor.fingerprint(), "not to be handed out");
        for (Practice practice : set) {
            List<String> sentences = PracticeSheet.sentences(monitor, practice);
            List<String> alone = DocumentLines.of(PracticeKey.of(monitor, List.of(practice)));
            assertThat(lines)
                    .containsAll(alone.subList(
                            alone.indexOf("2\u00a0\u00a0Answer to sheet " + practice.seed()) + 1, alone.size()))
                    .contains("Right is " + practice.right() + ": " + sentences.get(practice.answer()))
                    .anyMatch(line -> line.startsWith(practice.seed() + " | " + practice.right() + " | "));
            for (int i = 0; i < sentences.size(); i++) {
                String begins = Practice.letter(i) + " | " + sentences.get(i) + " | R";
                assertThat(alone.stream().anyMatch(line -> line.startsWith(begins)))
                        .as("seed %s, %s", practice.seed(), begins)
                        .isEqualTo(i != practice.answer());
            }
        }
    }

    @Test
    void theTrainersPageShowsTheSheetThatItsCommandMakes() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "rehearsing.md"));
        List<String> sentences =
                PracticeSheet.sentences(monitor, rehearsal.sheet(17).orElseThrow());
        for (int i = 0; i < sentences.size(); i++) {
            assertThat(page).contains("    " + Practice.letter(i) + "  " + sentences.get(i) + "\n");
        }
    }

    @Test
    void aHouseThatSaysGroundReadsGround() {
        Plan plan = new SmallPlan().grounded().plan();
        Rehearsal grounded = Rehearsal.of(plan, Situation.ORDINARY);
        List<Practice> set = new ArrayList<>();
        for (long seed = 1; seed <= 20; seed++) {
            grounded.sheet(seed).ifPresent(set::add);
        }
        assertThat(set).isNotEmpty();
        List<String> lines = new ArrayList<>(DocumentLines.of(PracticeKey.of(plan, set)));
        set.forEach(practice -> lines.addAll(DocumentLines.of(PracticeSheet.of(plan, practice))));
        assertThat(lines)
                .anyMatch(line -> line.contains("ground"))
                .noneMatch(line -> line.toLowerCase(Locale.ROOT).contains("earth"));
    }
}
