package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;

/** One slip gives one problem, not one for everything that refers to it. */
class FollowOnTest {

    @Test
    void parts_that_are_no_list_are_one_problem_whatever_names_them() {
        String sample = TestFiles.text(Path.of("../samples/brindlewick-ward-monitor.yaml"));
        String broken = sample.replaceFirst("(?ms)^applied-parts:.*?^ports:", "applied-parts: none\nports:");
        assertThat(broken).contains("panel: [ecg, spo2, cuff, ibp, temp]");
        assertThat(DeviceReader.read("d.yaml", broken.getBytes(StandardCharsets.UTF_8))
                        .problems())
                .extracting(Problem::message)
                .singleElement()
                .asString()
                .contains("'applied-parts'");
    }

    @Test
    void a_file_without_parts_still_hears_of_those_its_panel_names() {
        String sample = TestFiles.text(Path.of("../samples/brindlewick-ward-monitor.yaml"));
        String broken = sample.replaceFirst("(?ms)^applied-parts:.*?^ports:", "applied-parts: []\nports:");
        assertThat(DeviceReader.read("d.yaml", broken.getBytes(StandardCharsets.UTF_8))
                        .problems())
                .extracting(Problem::message)
                .contains("'ecg' is no applied part of this file; the file lists none");
    }
}
