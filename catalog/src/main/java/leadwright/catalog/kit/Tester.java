package leadwright.catalog.kit;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.quantity.Quantity;

/**
 * The tester.
 *
 * @param outlets empty where it has none (fixed-plant case)
 * @param accuracy by function: {@code leakage}, {@code earth}, {@code insulation}, {@code voltage}
 */
public record Tester(
        String name,
        Optional<Jacks> jacks,
        Optional<EarthJack> earthJack,
        Optional<TouchThrough> touchThrough,
        Optional<Inlet> inlet,
        List<Outlet> outlets,
        Set<TesterSwitch> switches,
        List<MeasuringNetwork> networks,
        List<Method> methods,
        List<Component> components,
        Optional<EarthTest> earthTest,
        List<Quantity> insulation,
        Optional<PartSource> partSource,
        Map<String, Accuracy> accuracy,
        Optional<LocalDate> calibratedUntil) {
    public Tester {
        outlets = List.copyOf(outlets);
        switches = Set.copyOf(switches);
        networks = List.copyOf(networks);
        methods = List.copyOf(methods);
        components = List.copyOf(components);
        insulation = List.copyOf(insulation);
        accuracy = Map.copyOf(accuracy);
    }
}
