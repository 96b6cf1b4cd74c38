package leadwright.render.diagram;

/**
 * A row before it has a height.
 *
 * @param group index of its group on the panel
 * @param height room it takes
 * @param above further room above it: where a group begins, and for what the group's name needs
 */
record Row(Unit unit, int group, double height, double above) {}
