package leadwright.planner;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.ElectrodeSet;
import leadwright.catalog.table.ElectrodeSets;
import leadwright.planner.plan.NaturalOrder;

/**
 * A request with every list of its files in one order, whatever the order in the files: applied parts as the panel shows
 * them, connections of an electrode set as the set has them, all else with an id by id, and what has none by what it says.
 * Lists of plain words, such as the house's methods, say an order of preference and keep it.
 *
 * <p>Needs any request. Gives one that differs in order only, the same for two files that differ in order only. Cost:
 * sorting. Proof: each order is total, for ids are unique in their list and the panel lists every part once.
 */
final class Arranged {
    private Arranged() {}

    static Request request(Request request) {
        return new Request(
                device(request.device()),
                arranged(request.kit()),
                request.rules(),
                arranged(request.house()),
                request.occasion(),
                request.on(),
                // What is proposed names what falls short, which the audit asks for.
                true,
                request.situation());
    }

    private static Device device(Device device) {
        Device arranged = arranged(device);
        List<AppliedPart> parts = new ArrayList<>();
        for (String id : device.panel()) {
            arranged.part(id).map(Arranged::part).ifPresent(parts::add);
        }
        return with(arranged, "appliedParts", parts);
    }

    private static AppliedPart part(AppliedPart part) {
        List<String> set = part.set().flatMap(ElectrodeSets.builtIn()::find).stream()
                .flatMap((ElectrodeSet known) -> known.wires().stream())
                .map(wire -> wire.id())
                .toList();
        Comparator<PatientConnection> bySet = Comparator.comparingInt(each -> set.indexOf(each.id()));
        List<PartFunction> functions = part.functions().stream()
                .map(function -> new PartFunction(
                        function.id(),
                        function.connections().stream().sorted(bySet).toList()))
                .toList();
        return with(part, "functions", functions);
    }

    /** The record with the lists of records in it, however deep, in their own order. */
    private static <T extends Record> T arranged(T record) {
        T arranged = record;
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Object value = Canonical.get(record, component.getAccessor());
            Object other = value instanceof Optional<?> optional ? optional.map(Arranged::within) : within(value);
            if (!other.equals(value)) {
                arranged = with(arranged, component.getName(), other);
            }
        }
        return arranged;
    }

    private static Object within(Object value) {
        if (described(value) && value instanceof Record record) {
            return arranged(record);
        }
        if (value instanceof List<?> list && list.stream().allMatch(Arranged::described)) {
            return list.stream()
                    .map(Record.class::cast)
                    .map(Arranged::arranged)
                    .sorted(Comparator.comparing(Arranged::name, NaturalOrder.IDS)
                            .thenComparing(Canonical::text))
                    .toList();
        }
        return value;
    }

    /** A thing that a file describes, no word and no amount. */
    private static boolean described(Object each) {
        return each instanceof Record && !(each instanceof Quantity);
    }

    private static String name(Record record) {
        return Arrays.stream(record.getClass().getRecordComponents())
                .filter(component -> component.getName().equals("id"))
                .map(component -> String.valueOf(Canonical.get(record, component.getAccessor())))
                .findFirst()
                .orElse("");
    }

    private static <T extends Record> T with(T record, String name, Object value) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Object[] values = Arrays.stream(components)
                .map(component ->
                        component.getName().equals(name) ? value : Canonical.get(record, component.getAccessor()))
                .toArray();
        try {
            @SuppressWarnings("unchecked")
            Constructor<T> constructor = (Constructor<T>) record.getClass()
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new));
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a record that cannot be made again", e);
        }
    }
}
