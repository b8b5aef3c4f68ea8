// A bundler of one's own: only what the page uses, registered by hand.
import { define, MwBuild, MwTeeth, MwValue } from "@meshwright/elements";

define(MwBuild, MwTeeth, MwValue);
