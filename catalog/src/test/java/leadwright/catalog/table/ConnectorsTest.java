package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.house.Times;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class ConnectorsTest {
    private final Connectors table = Connectors.builtIn();

    /**
     * The mating matrix, transcribed on its own from the project's page of facts on connectors: a row is what the lead or
     * the device offers, a column what the analyser's side or an adapter offers. {@code Y} mates, {@code p} mates and
     * loses a protective property, {@code -} does not mate (an adapter does not count).
     */
    private static final List<String> COLUMNS = List.of(
            "tp15-pin",
            "tp15-socket",
            "lab-4mm-socket",
            "lab-4mm-socket-recessed",
            "lab-4mm-plug",
            "lab-4mm-plug-shrouded",
            "snap-stud",
            "snap-socket",
            "pinch-clip",
            "din-42801-stud",
            "din-42801-socket");

    private static final Map<String, String> MATRIX = new LinkedHashMap<>();

    static {
        MATRIX.put("tp15-socket", "             Y - - - - - - - - - -");
        MATRIX.put("tp15-pin", "                - Y - - - - - - - - -");
        MATRIX.put("lab-4mm-plug", "            - - Y p - - - - p - -");
        MATRIX.put("lab-4mm-plug-shrouded", "   - - - Y - - - - - - -");
        MATRIX.put("lab-4mm-plug-retractable", "- - Y Y - - - - - - -");
        MATRIX.put("snap-socket", "             - - - - - - Y - - - -");
        MATRIX.put("snap-stud", "               - - - - - - - Y p - -");
        MATRIX.put("pinch-clip", "              - - - - p - p - - p -");
        MATRIX.put("din-42801-socket", "        - - - - - - - - - Y -");
    }

    @TestFactory
    Stream<DynamicTest> every_cell_of_the_mating_matrix() {
        List<DynamicTest> cells = new ArrayList<>();
        MATRIX.forEach((row, text) -> {
            String[] marks = text.trim().split(" ");
            assertThat(marks).hasSameSizeAs(COLUMNS);
            for (int i = 0; i < marks.length; i++) {
                String column = COLUMNS.get(i);
                Mating wanted = switch (marks[i]) {
                    case "Y" -> Mating.YES;
                    case "p" -> Mating.UNPROTECTED;
                    default -> Mating.NO;
                };
                cells.add(DynamicTest.dynamicTest(
                        row + " and " + column,
                        () -> assertThat(table.mates(row, column)).isEqualTo(wanted)));
            }
        });
        return cells.stream();
    }

    /** The rows of the matrix that are not plain pairs: the socket behind a stackable plug, and a clamp on bare metal. */
    @Test
    void a_stackable_plug_goes_in_like_a_bare_one_and_takes_a_chain_behind() {
        String rear = table.find("lab-4mm-plug-stackable").orElseThrow().rear().orElseThrow();
        assertThat(table.mates(rear, "lab-4mm-plug")).isEqualTo(Mating.YES);
        assertThat(table.mates(rear, "lab-4mm-plug-shrouded")).isEqualTo(Mating.NO);
        for (String other : table.byId().keySet()) {
            if (!other.equals("pinch-clip")) {
                assertThat(table.mates("lab-4mm-plug-stackable", other))
                        .as(other)
                        .isEqualTo(table.mates("lab-4mm-plug", other));
            }
        }
    }

    @Test
    void bare_metal_takes_jaws_and_tips_and_paint_takes_foil_only() {
        assertThat(matesOf("metal")).containsExactly("metal-edge", "metal-spot");
        assertThat(matesOf("painted")).containsExactly("foil-wrap");
        assertThat(matesOf("insulating")).containsExactly("foil-wrap");
    }

    @Test
    void skin_liquid_and_shaft_take_their_own_aids() {
        assertThat(matesOf("skin-surface")).containsExactly("foil-wrap", "saline-bath");
        assertThat(matesOf("liquid-column")).containsExactly("fluid-electrode");
        assertThat(matesOf("probe-shaft")).containsExactly("saline-bath");
    }

    @Test
    void nothing_mates_with_a_recessed_pin_of_itself() {
        assertThat(matesOf("recessed-pin")).isEmpty();
    }

    /** Two plugs never mate, nor two sockets, nor anything with another of its kind. */
    @Test
    void nothing_mates_with_itself() {
        for (String id : table.byId().keySet()) {
            assertThat(table.mates(id, id)).as(id).isEqualTo(Mating.NO);
        }
        List<String> plugs = table.byId().keySet().stream()
                .filter(id -> id.startsWith("lab-4mm-plug"))
                .toList();
        assertThat(plugs).hasSize(4);
        for (String one : plugs) {
            for (String other : plugs) {
                assertThat(table.mates(one, other)).as(one + " and " + other).isEqualTo(Mating.NO);
            }
        }
    }

    /** The rows themselves, not {@link Connectors#mates}, which would hide a one-sided row. */
    @Test
    void the_rows_are_symmetric_and_name_known_ends() {
        for (Connector connector : table.byId().values()) {
            for (String mate : connector.mates()) {
                assertThat(table.find(mate).orElseThrow().mates()).as(mate).contains(connector.id());
            }
            for (String mate : connector.matesUnprotected()) {
                assertThat(table.find(mate).orElseThrow().matesUnprotected())
                        .as(mate)
                        .contains(connector.id());
                assertThat(connector.mates()).doesNotContain(mate);
            }
            connector.rear().ifPresent(rear -> assertThat(table.find(rear)).isPresent());
        }
    }

    @Test
    void every_4_mm_end_says_whether_it_is_shrouded() {
        for (Connector connector : table.byId().values()) {
            assertThat(connector.shrouded().isPresent())
                    .as(connector.id())
                    .isEqualTo(connector.id().startsWith("lab-4mm-"));
        }
        assertThat(table.find("lab-4mm-plug").orElseThrow().unshrouded()).isTrue();
        assertThat(table.find("lab-4mm-plug-shrouded").orElseThrow().unshrouded())
                .isFalse();
        assertThat(table.find("snap-stud").orElseThrow().unshrouded()).isFalse();
    }

    @Test
    void every_joint_has_bench_times() {
        for (Connector connector : table.byId().values()) {
            String kind = connector.contact().timed().word();
            assertThat(Times.defaults().contact(kind)).as(connector.id()).isNotNull();
        }
    }

    @Test
    void a_surface_takes_the_kind_of_what_is_put_on_it() {
        assertThat(table.joint("skin-surface", "foil-wrap")).isEqualTo(ContactKind.FOIL);
        assertThat(table.joint("skin-surface", "saline-bath")).isEqualTo(ContactKind.BATH);
        assertThat(table.joint("liquid-column", "fluid-electrode")).isEqualTo(ContactKind.FLUID);
        assertThat(table.joint("metal", "metal-edge")).isEqualTo(ContactKind.CLIP);
        assertThat(table.joint("snap-socket", "snap-stud")).isEqualTo(ContactKind.SNAP);
        assertThat(table.joint("snap-stud", "pinch-clip")).isEqualTo(ContactKind.SNAP);
        assertThat(table.joint("tp15-socket", "tp15-pin").word()).isEqualTo("touch-proof");
        assertThat(table.joint("lab-4mm-plug", "lab-4mm-socket").word()).isEqualTo("lab-4mm");
    }

    @Test
    void a_file_adds_connectors_that_mate_both_ways() {
        Connectors extended = table.with(List.of(
                definition("pad-coupling", List.of("pad-plate", "lab-4mm-socket"), "5 A"),
                definition("pad-plate", List.of(), "2 A")));
        assertThat(extended.mates("pad-plate", "pad-coupling")).isEqualTo(Mating.YES);
        assertThat(extended.mates("lab-4mm-socket", "pad-coupling")).isEqualTo(Mating.YES);
        assertThat(extended.mates("lab-4mm-socket", "lab-4mm-plug")).isEqualTo(Mating.YES);
        assertThat(extended.find("pad-plate").orElseThrow().mates()).containsExactly("pad-coupling");
        assertThat(extended.joint("pad-coupling", "pad-plate")).isEqualTo(ContactKind.LAB_4MM);
        assertThat(table.mates("lab-4mm-socket", "pad-coupling"))
                .as("the catalog's own table is unchanged")
                .isEqualTo(Mating.NO);
    }

    @Test
    void a_connector_defined_twice_adds_up_and_keeps_the_lower_rating() {
        Connectors extended = table.with(
                List.of(definition("own", List.of("tab"), "5 A"), definition("own", List.of("metal"), "2 A")));
        assertThat(extended.find("own").orElseThrow().mates()).containsExactly("metal", "tab");
        assertThat(extended.find("own").orElseThrow().current().orElseThrow().text())
                .isEqualTo("2 A");
    }

    @Test
    void a_file_cannot_change_a_built_in_connector() {
        List<ConnectorDefinition> bad = List.of(definition("lab-4mm-plug", List.of("lab-4mm-plug"), "1 A"));
        assertThatThrownBy(() -> table.with(bad))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("lab-4mm-plug");
    }

    @Test
    void an_unknown_end_mates_with_nothing() {
        assertThat(table.mates("snap-socket", "never-heard-of")).isEqualTo(Mating.NO);
        assertThat(table.mates("never-heard-of", "never-heard-of")).isEqualTo(Mating.NO);
    }

    private static ConnectorDefinition definition(String id, List<String> mates, String current) {
        return new ConnectorDefinition(
                id, mates, Optional.of(Quantities.parse(current, Dimension.CURRENT)), Optional.empty());
    }

    private List<String> matesOf(String id) {
        return table.byId().keySet().stream()
                .filter(other -> table.mates(id, other) != Mating.NO)
                .toList();
    }
}
