/** What the stage editor says beside the words of every element, in English. */
export const editorWords = {
  shared: "From the motor to the split",
  add: "Add a stage",
  up: "Move up: {0}",
  down: "Move down: {0}",
  remove: "Remove: {0}",
  gearMore: "One more gear: {0}",
  gearLess: "One gear less: {0}",
  more: "All there is to say: {0}",
  kinds: {
    pair: "Pair of gears",
    train: "Gear row",
    belt: "Belt or chain",
    worm: "Worm",
    planetary: "Planetary",
    published: "Printed ratio",
    selectable: "Box with a lever",
  },
};
