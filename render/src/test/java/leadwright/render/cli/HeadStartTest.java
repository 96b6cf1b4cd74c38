package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadStartTest {

    @ParameterizedTest
    @CsvSource({
        "plan device.yaml, true",
        "plan device.yaml --formats html;pdf, true",
        "plan device.yaml --formats=PDF, true",
        "plan device.yaml --formats svg;html, false",
        "plan device.yaml --formats=json, false",
        "plan device.yaml --json, false",
        "plan --help, false",
        "plan device.yaml --formats, false"
    })
    void the_typesetter_is_loaded_only_for_a_pdf(String line, boolean typesets) {
        assertThat(HeadStart.typesets(List.of(line.replace(';', ',').split(" "))))
                .isEqualTo(typesets);
    }

    @ParameterizedTest
    @CsvSource({
        "plan device.yaml, iec-62353-2014",
        "plan device.yaml --rules iec-60601-1-ed3 --json, iec-60601-1-ed3",
        "plan device.yaml --rules=no-such, no-such",
        "plan device.yaml --rules, iec-62353-2014"
    })
    void the_rule_set_that_is_named_is_read_else_the_usual_one(String line, String rules) {
        assertThat(HeadStart.rules(List.of(line.split(" ")))).isEqualTo(rules);
    }
}
