package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import leadwright.catalog.rules.Mark;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every row of the built-in tables says where it comes from. */
class OriginTest {

    @TestFactory
    Stream<DynamicTest> every_source_of_a_row_is_listed() {
        return origins().entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.getKey(),
                        () -> assertThat(Sources.builtIn().byKey().keySet())
                                .containsAll(row.getValue().sources())));
    }

    @TestFactory
    Stream<DynamicTest> mark_A_has_a_source_and_mark_C_says_from_memory() {
        return origins().entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(row.getKey(), () -> {
                    Origin origin = row.getValue();
                    assertThat(origin.fromMemory()).isEqualTo(origin.mark() == Mark.C);
                    if (origin.mark() != Mark.C) {
                        assertThat(origin.sources()).isNotEmpty();
                    }
                }));
    }

    @Test
    void the_tables_are_as_long_as_expected() {
        assertThat(Connectors.builtIn().byId()).hasSize(34);
        assertThat(MainsCouplers.builtIn().inlets()).hasSize(11);
        assertThat(MainsCouplers.builtIn().plugs()).hasSize(11);
        assertThat(ElectrodeSets.builtIn().byId()).hasSize(7);
        assertThat(Conductors.builtIn().byArea()).hasSize(12);
    }

    private static Map<String, Origin> origins() {
        Map<String, Origin> all = new LinkedHashMap<>();
        Connectors.builtIn()
                .byId()
                .forEach((id, row) -> all.put(id, row.origin().orElseThrow()));
        MainsCouplers.builtIn().inlets().forEach((id, row) -> all.put(id, row.origin()));
        MainsCouplers.builtIn().plugs().forEach((id, row) -> all.put(id, row.origin()));
        List<ElectrodeSet> sets = new ArrayList<>(ElectrodeSets.builtIn().byId().values());
        sets.forEach(set -> all.put(set.id(), set.origin()));
        sets.forEach(set -> set.wires().forEach(wire -> all.put(set.id() + " " + wire.id(), wire.origin())));
        Conductors.builtIn().byArea().forEach(row -> all.put(row.name(), row.origin()));
        for (int awg = 10; awg <= 28; awg += 2) {
            Conductors.builtIn().find("AWG " + awg).ifPresent(row -> all.put(row.name(), row.origin()));
        }
        return all;
    }
}
