package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.planner.Plan;
import leadwright.render.sheet.SmallPlan;
import org.junit.jupiter.api.Test;

class PlanJsonTest {

    private static final Schema SCHEMA = schema();

    @Test
    void everyKindOfPlanAgreesWithTheSchema() {
        for (SmallPlan each : List.of(
                new SmallPlan(),
                new SmallPlan().partial(),
                new SmallPlan().training().confirmed(),
                new SmallPlan().named("\"},{\u0000 \ud83d\ude00 </script>\n"))) {
            assertThat(violations(PlanJson.of(each.plan()))).isEmpty();
        }
    }

    @Test
    void theSchemaRefusesWhatIsNoPlan() {
        String json = PlanJson.of(new SmallPlan().plan());
        assertThat(violations(json.replace("\"plan/1\"", "\"plan/2\""))).isNotEmpty();
        assertThat(violations(json.replaceFirst("\"at-most\"", "\"about\""))).isNotEmpty();
        assertThat(violations(json.replaceFirst("\"seconds\" ?: 10", "\"seconds\": \"10\"")))
                .isNotEmpty();
    }

    @Test
    void limitsThatAreNotConfirmedAreThoseOfTheList() {
        // Of mark C without and of mark B without a house's confirmation: only the first is unconfirmed.
        for (boolean fromText : List.of(false, true)) {
            Plan plan = (fromText ? new SmallPlan().confirmed() : new SmallPlan()).plan();
            Matcher limits = Pattern.compile("\"limit\": \\{\\s*\"id\": \"([^\"]+)\"[^}]*\"confirmed\": (true|false)")
                    .matcher(PlanJson.of(plan));
            TreeSet<String> open = new TreeSet<>();
            TreeSet<String> settled = new TreeSet<>();
            while (limits.find()) {
                (limits.group(2).equals("true") ? settled : open).add(limits.group(1));
            }
            assertThat(open).containsExactlyElementsOf(new TreeSet<>(plan.unconfirmedLimits()));
            assertThat(fromText ? settled : open).isNotEmpty();
        }
    }

    @Test
    void stableKeysComeFirstAndInTheirOrder() {
        String json = PlanJson.of(new SmallPlan().plan());
        assertThat(topKeys(json))
                .startsWith(
                        "leadwright",
                        "fingerprint",
                        "partial",
                        "device",
                        "kit",
                        "rules",
                        "hookups",
                        "readings",
                        "steps",
                        "not-applicable",
                        "time",
                        "proof");
    }

    @Test
    void partsOfTheTimeSumToTheTotalAsPrinted() {
        Plan plan = new SmallPlan().plan();
        String json = PlanJson.of(plan);
        String time = json.substring(json.indexOf("\"time\""), json.indexOf("\"plain-order\""));
        Matcher numbers = Pattern.compile("\"([a-z-]+)\": (\\d+)").matcher(time);
        int sum = 0;
        int total = -1;
        while (numbers.find()) {
            if (numbers.group(1).equals("total")) {
                total = Integer.parseInt(numbers.group(2));
            } else {
                sum += Integer.parseInt(numbers.group(2));
            }
        }
        assertThat(sum).isEqualTo(total).isEqualTo(plan.time().total());
    }

    @Test
    void samePlanSameTextEndedByOneLineFeed() {
        String json = PlanJson.of(new SmallPlan().plan());
        assertThat(PlanJson.of(new SmallPlan().plan())).isEqualTo(json);
        assertThat(json).endsWith("}\n").doesNotContain("\r").doesNotEndWith("\n\n");
    }

    private static List<String> topKeys(String json) {
        return Pattern.compile("(?m)^  \"([a-z-]+)\":")
                .matcher(json)
                .results()
                .map(match -> match.group(1))
                .toList();
    }

    private static List<Error> violations(String json) {
        return SCHEMA.validate(json, InputFormat.JSON);
    }

    private static Schema schema() {
        try (InputStream in = PlanJson.class.getResourceAsStream("plan-1.schema.json")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text, InputFormat.JSON);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
