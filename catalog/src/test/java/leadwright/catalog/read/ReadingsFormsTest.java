package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One set of readings in its forms, and what a spreadsheet may do to the form with commas. */
class ReadingsFormsTest {

    private static final String CSV = """
            leadwright,readings/1
            plan,3f9c0a71
            occasion,recurrent
            device.serial,1
            device.inventory,A-17
            by,R. Sedgemere
            date,2027-01-10
            mains-voltage,231 V
            nulls.start,62 mohm
            nulls.end,63 mohm

            id,value,not-taken,remark
            R05,-3 mohm,,after nulling
            R06,open,,
            R07,12.4 uA,,
            R08,< 1 uA,,
            R09,,the maker forbids it,
            """;

    private static Outcome<Readings> read(String text) {
        return ReadingsReader.read("r", text.getBytes(StandardCharsets.UTF_8));
    }

    /** All that a record says, without the places. */
    private static String told(Readings readings) {
        return readings.plan().value()
                + readings.occasion().map(each -> each.value())
                + readings.device()
                + readings.by()
                + readings.date().map(each -> each.value())
                + readings.mainsVoltage().map(each -> each.value())
                + readings.nulls()
                + readings.taken().stream().map(ReadingsFormsTest::told).collect(Collectors.joining("\n"));
    }

    private static String told(Taken taken) {
        return taken.id().value() + taken.shown().map(each -> each.value()) + taken.notTaken() + taken.remark();
    }

    @Test
    void theFormWithCommasSaysWhatTheOtherSays() {
        Readings yaml = read(TestFiles.example("readings")).orThrow();
        assertThat(told(read(CSV).orThrow())).isEqualTo(told(yaml));
        assertThat(yaml.taken()).hasSize(5);
        assertThat(yaml.taken().get(1).shown().orElseThrow().value()).isEqualTo(new Shown.NoPath());
    }

    @Test
    void aSpreadsheetMayChangeMarksEndsAndSeparators() {
        String told = told(read(CSV).orThrow());
        assertThat(told(read("\ufeff" + CSV).orThrow())).isEqualTo(told);
        assertThat(told(read(CSV.replace("\n", "\r\n")).orThrow())).isEqualTo(told);
        assertThat(told(read(CSV.replace(',', ';')).orThrow())).isEqualTo(told);
        assertThat(told(read(CSV.replace("R. Sedgemere", "\"R. Sedgemere\",,")).orThrow()))
                .isEqualTo(told);
        assertThat(told(read(CSV.stripTrailing()).orThrow())).isEqualTo(told);
    }

    @Test
    void textStaysTextWhateverItBeginsWith() {
        Readings readings = read(CSV.replace("after nulling", "\"=1+1, \"\"so\"\"\nand -\""))
                .orThrow();
        assertThat(readings.taken().get(0).remark()).contains("=1+1, \"so\"\nand -");
        assertThat(readings.taken().get(1).id().at().line()).isEqualTo(15);
    }

    @Test
    void everyMistakeOfTheFormHasItsPlace() {
        String broken = CSV.replace("date,2027-01-10", "date,2027-01-10,again\nby,X\nnul,1")
                .replace("id,value,not-taken,remark", "id,value,not-taken,remark,value,colour")
                .replace("R06,open,,", "R06,open,,,,blue,too far");
        assertThat(read(broken).problems())
                .extracting(Problem::text)
                .satisfiesExactly(
                        each -> assertThat(each).startsWith("r:7:17: 'date' has one value"),
                        each -> assertThat(each).startsWith("r:8:1: key 'by' stands twice"),
                        each -> assertThat(each).startsWith("r:9:1: unknown key 'nul'"),
                        each -> assertThat(each).startsWith("r:14:27: column 'value' stands twice"),
                        each -> assertThat(each).startsWith("r:16:13: unknown key 'colour'"),
                        each -> assertThat(each).startsWith("r:16:18: the header names no column"));
        assertThat(read("leadwright,readings/1\nplan,3f9c0a71\n").problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("there is no header line"));
        assertThat(read("leadwright,house/1\nid,value\n").problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("where readings (readings/1) is due"));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void damageIsReadOrRefusedAndNothingElse(long seed) {
        Random random = new Random(seed);
        String pieces = "\",;\n\r\t.=R0<>- µ\u2028é";
        int refused = 0;
        for (int i = 0; i < 500; i++) {
            StringBuilder text = new StringBuilder(CSV);
            for (int cut = random.nextInt(4); cut >= 0; cut--) {
                int at = 12 + random.nextInt(text.length() - 12);
                text.replace(at, Math.min(text.length(), at + random.nextInt(3)), piece(pieces, random));
            }
            Outcome<Readings> outcome = read(text.toString());
            refused += outcome.found().isPresent() ? 0 : 1;
            assertThat(outcome.found().isPresent()).isEqualTo(outcome.problems().isEmpty());
        }
        assertThat(refused).isBetween(100, 500);
    }

    private static String piece(String pieces, Random random) {
        int at = random.nextInt(pieces.length());
        return pieces.substring(at, at + 1);
    }

    @Test
    void columnsOfThePlansOwnTableAreLetPass() {
        String header = "id,hookup,state,mode,quantity,of,measured,against,earthed,place,method,component,network,"
                + "source-polarity,bound,limit,limit-id,mark,clause,value,remark";
        String row = "R05,H1,off,off,earth-resistance,stud,,,,stud,,,,,at-most,300 mohm,x,B,5.3.2,62 mohm,";
        String text = CSV.substring(0, CSV.indexOf("id,value")) + header + "\n" + row + "\n";
        List<Taken> taken = read(text).orThrow().taken();
        assertThat(taken)
                .singleElement()
                .satisfies(each -> assertThat(told(each)).contains("62 mohm"));
    }
}
