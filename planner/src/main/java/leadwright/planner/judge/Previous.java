package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import leadwright.planner.file.Given;

/**
 * What an earlier {@code record/1} says of the same device. Its readings are found by their keys, which stay the same from
 * plan to plan; void ones are left out.
 *
 * @param file name of the file, for messages
 */
public record Previous(
        String file,
        String device,
        Optional<String> serial,
        Optional<String> inventory,
        LocalDate date,
        Map<String, Value> values) {
    public Previous {
        values = java.util.Collections.unmodifiableMap(new TreeMap<>(values));
    }

    /** @param method of the leakage, empty where there is none: values by different methods are not set beside each other */
    public record Value(Optional<String> method, Quantity counted, Optional<Quantity> uncertainty) {}

    /** Reads an earlier record. */
    public static Outcome<Previous> read(String file, byte[] bytes) {
        return Document.readWritten(file, bytes, "record/1", fields -> read(file, new Given(fields)));
    }

    private static Supplier<Previous> read(String file, Given top) {
        Optional<Given> device = top.due("device");
        Optional<LocalDate> date = top.date("date");
        if (date.isEmpty() && top.maybe("date").isEmpty()) {
            top.missing("date");
        }
        String name = device.map(each -> each.text("name")).orElse("");
        List<Dimension> dimensions = List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE);
        Map<String, Value> values = new TreeMap<>();
        for (Given row : top.rows("readings")) {
            String key = row.text("key");
            Optional<Quantity> counted = row.quantity("counted", dimensions);
            Optional<Quantity> uncertainty = row.quantity("uncertainty", dimensions);
            if (counted.isPresent() && !row.text("verdict").equals(Verdict.VOID.word())) {
                values.put(key, new Value(row.maybe("method"), counted.get(), uncertainty));
            }
        }
        return () -> new Previous(
                file,
                name,
                device.flatMap(each -> each.maybe("serial")),
                device.flatMap(each -> each.maybe("inventory")),
                date.orElseThrow(),
                values);
    }

    /** Why this record may not be set beside the readings. */
    List<Problem> problems(PlannedTest plan, Readings readings, LocalDate day) {
        List<String> wrong = new ArrayList<>();
        if (!device.equals(plan.device().name())) {
            wrong.add("the record is of '" + device + "', the plan of '"
                    + plan.device().name() + "'");
        }
        if (differ(serial, readings.device().serial())) {
            wrong.add("the record is of serial number '" + serial.orElseThrow() + "', the readings of '"
                    + readings.device().serial().orElseThrow() + "'");
        } else if (differ(inventory, readings.device().inventory())) {
            wrong.add("the record is of inventory number '" + inventory.orElseThrow() + "', the readings of '"
                    + readings.device().inventory().orElseThrow() + "'");
        }
        if (date.isAfter(day)) {
            wrong.add("the record is of " + date + ", later than the readings of " + day);
        }
        return wrong.stream().map(message -> new Problem(file, 1, 1, message)).toList();
    }

    private static boolean differ(Optional<String> one, Optional<String> other) {
        return one.isPresent() && other.isPresent() && !one.equals(other);
    }

    Optional<Judged.Before> of(PlannedReading planned) {
        return Optional.ofNullable(values.get(planned.key()))
                .filter(value -> value.method().equals(planned.method().map(method -> method.word())))
                .map(value -> new Judged.Before(date, value.counted(), value.uncertainty()));
    }
}
