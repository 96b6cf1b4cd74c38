package leadwright.catalog.rules;

import leadwright.catalog.quantity.Quantity;

/**
 * A limit as a rule set states it.
 *
 * @param id unique among all rule sets; house files refer to it
 * @param scope what it applies to
 */
public record LimitRow(String id, QuantityKind quantity, Scope scope, Limit.Bound bound, Quantity value, Basis basis) {

    /** The limit for one reading. */
    public Limit limit(boolean confirmed) {
        return new Limit(id, bound, value, basis.clause(), basis.mark(), basis.sources(), confirmed);
    }
}
