package leadwright.catalog.rules;

/**
 * Which connections a quantity joins.
 *
 * @param scope part types, methods and subject that it applies to
 */
public record JoiningRow(
        QuantityKind quantity, Scope scope, Joined joined, Against against, EarthedOthers earthed, Basis basis) {}
