package leadwright.catalog.device;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * An applied part.
 *
 * @param functions at least one; a part without named functions has one function with the part's id
 * @param namedFunctions whether the file names functions, so that connections are called part.function.connection
 * @param set the electrode set its connections came from
 * @param distance routed distance from the tester's place, where given: only then is reach checked
 * @param cable length of its own cable, where given
 */
public record AppliedPart(
        String id,
        String name,
        PartType type,
        boolean defibrillationProof,
        List<PartFunction> functions,
        boolean namedFunctions,
        Optional<String> set,
        Optional<Quantity> distance,
        Optional<Quantity> cable) {
    public AppliedPart {
        functions = List.copyOf(functions);
    }

    /** Full name of a function: {@code ibp.p1}, or the part's id where no functions are named. */
    public String functionName(PartFunction function) {
        return namedFunctions ? id + "." + function.id() : id;
    }

    /** All patient connections with their full names, in file order. */
    public List<Connection> connections() {
        List<Connection> all = new ArrayList<>();
        for (PartFunction function : functions) {
            String functionName = functionName(function);
            for (PatientConnection each : function.connections()) {
                all.add(new Connection(
                        functionName + "." + each.id(),
                        Connection.Kind.PATIENT,
                        id,
                        functionName,
                        each.terminal(),
                        each.label()));
            }
        }
        return List.copyOf(all);
    }
}
