package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Element;

/**
 * A circuit whose values are still open.
 *
 * @param branches resistances and capacitances made of parameters
 * @param fixed sources and switches
 */
public record Template(List<Branch> branches, List<Element> fixed) {
    public Template {
        branches = List.copyOf(branches);
        fixed = List.copyOf(fixed);
    }

    public enum Kind {
        RESISTANCE,
        CAPACITANCE
    }

    /** A parameter so many times. */
    public record Term(Parameter parameter, double times) {}

    /** An element whose value is a sum of terms. */
    public record Branch(String name, String from, String to, Kind kind, List<Term> terms) {
        public Branch {
            terms = List.copyOf(terms);
        }

        static Branch resistance(String name, String from, String to, Parameter value) {
            return new Branch(name, from, to, Kind.RESISTANCE, List.of(new Term(value, 1)));
        }

        static Branch capacitance(String name, String from, String to, Parameter value) {
            return new Branch(name, from, to, Kind.CAPACITANCE, List.of(new Term(value, 1)));
        }

        public double value(ToDoubleFunction<Parameter> values) {
            return terms.stream()
                    .mapToDouble(term -> term.times() * values.applyAsDouble(term.parameter()))
                    .sum();
        }

        Element element(ToDoubleFunction<Parameter> values) {
            return kind == Kind.RESISTANCE
                    ? new Element.Resistance(name, from, to, value(values))
                    : new Element.Capacitance(name, from, to, value(values));
        }

        Branch between(String otherFrom, String otherTo) {
            return new Branch(name, otherFrom, otherTo, kind, terms);
        }
    }

    public Circuit circuit(ToDoubleFunction<Parameter> values) {
        List<Element> elements = new ArrayList<>(fixed);
        branches.forEach(branch -> elements.add(branch.element(values)));
        return new Circuit(elements);
    }

    /** Every parameter once, in order of first use. */
    public Set<Parameter> parameters() {
        Set<Parameter> all = new LinkedHashSet<>();
        branches.forEach(branch -> branch.terms().forEach(term -> all.add(term.parameter())));
        return all;
    }

    static List<Term> terms(Parameter parameter, double times) {
        return List.of(new Term(parameter, times));
    }

    Template with(List<Branch> moreBranches, List<? extends Element> moreFixed) {
        List<Branch> allBranches = new ArrayList<>(branches);
        allBranches.addAll(moreBranches);
        List<Element> allFixed = new ArrayList<>(fixed);
        allFixed.addAll(moreFixed);
        return new Template(allBranches, allFixed);
    }
}
