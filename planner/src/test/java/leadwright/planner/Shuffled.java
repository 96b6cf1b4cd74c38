package leadwright.planner;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import leadwright.catalog.quantity.Quantity;

/**
 * The same request with every list of its files shuffled: items, applied parts, functions, connections, places, outputs,
 * limits, the house's lists. Lists of words, such as the panel, the house's methods or the ends of an item, keep theirs.
 */
final class Shuffled {
    private final Random random;

    private Shuffled(long seed) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 0xABCL);
    }

    static Request request(Request request, long seed) {
        Shuffled shuffled = new Shuffled(seed);
        return new Request(
                shuffled.record(request.device()),
                shuffled.record(request.kit()),
                request.rules(),
                shuffled.record(request.house()),
                request.occasion(),
                request.on());
    }

    private <T extends Record> T record(T record) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        try {
            Object[] values = new Object[components.length];
            for (int i = 0; i < components.length; i++) {
                values[i] = value(components[i].getAccessor().invoke(record));
            }
            @SuppressWarnings("unchecked")
            Constructor<T> constructor = (Constructor<T>) record.getClass()
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new));
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError("a record that cannot be copied", e);
        }
    }

    private Object value(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.map(this::value);
        }
        if (value instanceof Record record && !(value instanceof Quantity)) {
            return record(record);
        }
        if (value instanceof List<?> list
                && list.stream().allMatch(each -> each instanceof Record && !(each instanceof Quantity))) {
            List<Object> shuffled = new ArrayList<>();
            list.forEach(each -> shuffled.add(value(each)));
            Collections.shuffle(shuffled, random);
            return shuffled;
        }
        return value;
    }
}
