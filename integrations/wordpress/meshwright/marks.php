<?php
/**
 * Made by `node scripts/integrations.js` from calc's table of attributes.
 */

return array(
	'elements' => array(
		'mw-build' => array( 'build', 'src', 'json', 'mode', 'permalink', 'notebook', 'seal', 'stages', 'target', 'compare', 'centre', 'motor', 'battery', 'controller', 'mount', 'title', 'wheelbase', 'headline', 'lengths', 'front', 'front-wheel', 'front-motor', 'middle', 'middle-wheel', 'middle-motor', 'rear', 'rear-wheel', 'rear-motor', 'left', 'left-wheel', 'left-motor', 'right', 'right-wheel', 'right-motor', 'drive', 'drive-wheel', 'drive-motor' ),
		'mw-value' => array( 'build', 'figure', 'of', 'with', 'group', 'base', 'scope', 'from', 'measure', 'over', 'unit', 'digits', 'sign', 'drive', 'at' ),
		'mw-teeth' => array( 'build', 'of', 'label', 'min', 'max', 'free' ),
		'mw-ratio-summary' => array( 'build', 'of', 'at' ),
		'mw-overdrive-gauge' => array( 'build', 'of', 'with', 'base', 'scope', 'at' ),
		'mw-edits' => array( 'build', 'sticks' ),
		'mw-stage-editor' => array( 'build' ),
		'mw-train-drawing' => array( 'build', 'of', 'at' ),
		'mw-drive-line' => array( 'build', 'still', 'chosen', 'open', 'at' ),
		'mw-pair-finder' => array( 'build', 'of' ),
		'mw-train-finder' => array( 'build', 'of', 'wheels', 'lead' ),
		'mw-count-finder' => array( 'build', 'of', 'figure', 'output', 'with', 'want' ),
		'mw-change-table' => array( 'build', 'show', 'against' ),
		'mw-wheel-speed' => array( 'build', 'of', 'unit', 'loaded' ),
		'mw-working' => array( 'build', 'of', 'at' ),
		'mw-order-list' => array( 'build', 'from', 'at' ),
		'mw-parts-list' => array( 'build', 'at' ),
		'mw-bench-card' => array( 'build', 'at' ),
		'mw-quantity' => array( 'build', 'of', 'label' ),
		'mw-measurements' => array( 'build', 'of', 'at' ),
		'mw-unmarked-gear' => array( 'build' ),
		'mw-turn-count' => array( 'build', 'of' ),
	),
	'axle' => '^axle-[a-z][a-z0-9]*(?:-[a-z0-9]+)*$',
	'words' => array(
		'figure' => array( 'reduction', 'fraction', 'standing', 'range', 'count', 'counts', 'direction', 'gap', 'lead', 'farther', 'leader', 'drift', 'taken-up', 'mean', 'travel', 'change', 'centre', 'slot', 'fit', 'shortfall', 'backlash', 'speed', 'motor-rpm', 'wheel-rpm', 'hand-turns', 'volts', 'circle' ),
		'scope' => array( 'tyres', 'gears' ),
		'drive' => array( 'locked', 'straight-on' ),
		'measure' => array( 'sentence', 'arrow', 'heard', 'harmonic', 'arithmetic', 'reduction', 'wheel-speed', 'wheel-torque', 'midpoint', 'travel', 'both', 'from', 'to', 'full', 'nominal', 'held' ),
		'unit' => array( 'mm', 'cm', 'm', 'in', 'ft', 'km/h', 'm/s', 'mph', 'ft/s', 'V' ),
		'sign' => array( 'none' ),
	),
	'longest' => 5000,
);
