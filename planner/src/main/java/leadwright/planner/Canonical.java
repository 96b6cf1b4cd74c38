package leadwright.planner;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.RuleSet;

/**
 * The canonical text of records: components by name, maps by key, lists of what a file lists sorted, everything else in
 * its own order. The order in which a file lists things does not matter, the panel's order does.
 */
final class Canonical {
    private Canonical() {}

    /** SHA-256 of the canonical text of the parts, in lower-case hexadecimal. */
    static String fingerprint(Object... parts) {
        StringBuilder text = new StringBuilder();
        for (Object part : parts) {
            write(part, text);
            text.append('\n');
        }
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.toString().getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static String text(Object value) {
        StringBuilder text = new StringBuilder();
        write(value, text);
        return text.toString();
    }

    private static void write(Object value, StringBuilder text) {
        if (value instanceof Optional<?> optional) {
            optional.ifPresentOrElse(each -> write(each, text), () -> text.append('-'));
        } else if (value instanceof Record written) {
            record(written, text);
        } else if (value instanceof Map<?, ?> map) {
            Map<String, Object> sorted = new TreeMap<>();
            map.forEach((key, each) -> sorted.put(text(key), each));
            text.append('{');
            sorted.forEach((key, each) -> {
                text.append(key).append(':');
                write(each, text);
                text.append(',');
            });
            text.append('}');
        } else if (value instanceof Collection<?> collection) {
            list(collection, text);
        } else if (value instanceof String string) {
            text.append('"')
                    .append(string.replace("\\", "\\\\").replace("\"", "\\\""))
                    .append('"');
        } else {
            text.append(value);
        }
    }

    private static void record(Record written, StringBuilder text) {
        RecordComponent[] components = written.getClass().getRecordComponents();
        Arrays.sort(components, Comparator.comparing(RecordComponent::getName));
        text.append(written.getClass().getSimpleName()).append('(');
        for (RecordComponent component : components) {
            text.append(component.getName()).append('=');
            write(get(written, component.getAccessor()), text);
            text.append(';');
        }
        text.append(')');
    }

    private static void list(Collection<?> collection, StringBuilder text) {
        List<String> items = new ArrayList<>();
        boolean ids = collection instanceof Set<?>;
        for (Object each : collection) {
            ids |= hasId(each) || ofFile(each);
            items.add(text(each));
        }
        if (ids) {
            items.sort(Comparator.naturalOrder());
        }
        text.append('[').append(String.join(",", items)).append(']');
    }

    /** What a person lists in a file by what it is of, such as limits made tighter. */
    private static boolean ofFile(Object each) {
        return each instanceof Record
                && !(each instanceof Quantity)
                && !each.getClass().getPackageName().equals(RuleSet.class.getPackageName());
    }

    private static boolean hasId(Object each) {
        return each instanceof Record written
                && Arrays.stream(written.getClass().getRecordComponents())
                        .anyMatch(component -> component.getName().equals("id"));
    }

    static Object get(Record written, Method accessor) {
        try {
            accessor.setAccessible(true);
            return accessor.invoke(written);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException("a record component that cannot be read", e);
        }
    }
}
