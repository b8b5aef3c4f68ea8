<?php
/**
 * Plugin Name: Meshwright
 * Description: Articles whose drivetrain figures stay alive: lets Meshwright's elements through for everybody who may write posts, brings the script once to a page that has any, and takes a paste from the notebook.
 * Version: VERSION-OF-SCRIPT
 * Requires at least: 6.1
 * Requires PHP: 7.4
 * License: MIT
 *
 * @package Meshwright
 */

namespace Meshwright;

defined( 'ABSPATH' ) || exit;

const VERSION = 'VERSION-OF-SCRIPT';
const HASH    = 'HASH-OF-SCRIPT';

/** What may stand on any element: it says nothing of a drivetrain and runs nothing. */
const ON_ANY = array( 'id', 'class', 'lang', 'dir', 'title', 'translate', 'hidden', 'role', 'slot' );

/** The closed table of elements and attributes. */
function marks() {
	static $marks = null;
	$marks        = $marks ?? require __DIR__ . '/marks.php';
	return $marks;
}

/** Whether a value may be saved by somebody who may not post scripts. What a word means is told by the element itself. */
function is_value( $value ) {
	return strlen( $value ) <= 200000 && ! preg_match( '/[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]/', $value );
}

/** Whether an address leads to a file of a site. */
function is_address( $value ) {
	return is_value( $value ) && ( ! preg_match( '/^\s*[a-z][a-z0-9+.-]*:/i', $value ) || preg_match( '/^\s*https?:/i', $value ) );
}

/** Axles of names of their own, met in what is being saved: WordPress takes names of attributes one by one. */
function axles( $more = array() ) {
	static $names = array();
	$names        = array_slice( array_unique( array_merge( $names, $more ) ), -1000 );
	return $names;
}

/** Our elements and attributes among those that everybody who may write posts may save. */
function allowed( $tags, $context ) {
	if ( 'post' !== $context ) {
		return $tags;
	}
	$value = array( 'value_callback' => __NAMESPACE__ . '\is_value' );
	foreach ( marks()['elements'] as $tag => $names ) {
		$own = array_fill_keys( array_merge( ON_ANY, $names, 'mw-build' === $tag ? axles() : array() ), $value );
		if ( isset( $own['src'] ) ) {
			$own['src'] = array( 'value_callback' => __NAMESPACE__ . '\is_address' );
		}
		$tags[ $tag ] = $own + array(
			'data-*' => true,
			'aria-*' => true,
		);
	}
	return $tags;
}
add_filter( 'wp_kses_allowed_html', __NAMESPACE__ . '\allowed', 10, 2 );

/** Whether an element takes an attribute. */
function takes( $tag, $name ) {
	return in_array( $name, marks()['elements'][ $tag ], true )
		|| in_array( $name, ON_ANY, true )
		|| preg_match( '/^(?:data|aria)-/', $name )
		|| ( 'mw-build' === $tag && preg_match( '/' . marks()['axle'] . '/', $name ) );
}

/**
 * Before a text is cleaned: an element with an attribute that it does not have is left as the text inside. Without that attribute it
 * would stand for another figure, and nobody would be told.
 */
function before_cleaning( $text, $allowed, $protocols ) {
	if ( 'post' !== $allowed || false === stripos( $text, '<mw-' ) ) {
		return $text;
	}
	$pattern = '/<(\/?)(mw-[a-z-]+)((?:\s+[^\s"\'<>\/=]+(?:\s*=\s*(?:"[^"]*"|\'[^\']*\'|[^\s"\'=<>`]+))?)*)\s*>/i';
	$open    = array();
	return preg_replace_callback(
		$pattern,
		function ( $found ) use ( &$open ) {
			$tag = strtolower( $found[2] );
			if ( ! isset( marks()['elements'][ $tag ] ) ) {
				return '';
			}
			if ( '/' === $found[1] ) {
				return array_pop( $open[ $tag ] ) === false ? '' : $found[0];
			}
			preg_match_all( '/([^\s"\'<>\/=]+)(?:\s*=\s*(?:"[^"]*"|\'[^\']*\'|[^\s"\'=<>`]+))?/', $found[3], $names );
			$names        = array_map( 'strtolower', $names[1] );
			$is_whole     = array_filter( $names, fn( $name ) => ! takes( $tag, $name ) ) === array();
			$open[ $tag ] = array_merge( $open[ $tag ] ?? array(), array( $is_whole ) );
			axles( preg_grep( '/' . marks()['axle'] . '/', $names ) );
			return $is_whole ? $found[0] : '';
		},
		$text
	);
}
add_filter( 'pre_kses', __NAMESPACE__ . '\before_cleaning', 10, 3 );

/** The address of the script, with its version. */
function script_address() {
	return plugins_url( 'script/meshwright.js', __FILE__ );
}

/** Brings the script, once, to a page that shows any of our elements. */
function bring_script( $content ) {
	if ( false !== stripos( $content, '<mw-' ) && ! is_feed() ) {
		wp_enqueue_script( 'meshwright', script_address(), array(), VERSION, true );
	}
	return $content;
}
add_filter( 'the_content', __NAMESPACE__ . '\bring_script', 20 );
add_filter( 'the_excerpt', __NAMESPACE__ . '\bring_script', 20 );

/** The script's tag names its hash: what was changed on the way does not run, and the written figures stay. */
function with_hash( $tag, $handle ) {
	if ( 'meshwright' !== $handle ) {
		return $tag;
	}
	return str_replace( ' src=', sprintf( ' defer integrity="%s" crossorigin="anonymous" src=', esc_attr( HASH ) ), $tag );
}
add_filter( 'script_loader_tag', __NAMESPACE__ . '\with_hash', 10, 2 );

/** The block: a block of HTML that shows its figures alive while it is written. */
function editor() {
	wp_enqueue_script(
		'meshwright-block',
		plugins_url( 'block.js', __FILE__ ),
		array( 'wp-blocks', 'wp-block-editor', 'wp-components', 'wp-compose', 'wp-data', 'wp-element', 'wp-hooks' ),
		VERSION,
		true
	);
	wp_localize_script(
		'meshwright-block',
		'meshwrightBlock',
		array(
			'script' => add_query_arg( 'ver', VERSION, script_address() ),
			'hash'   => HASH,
		)
	);
}
add_action( 'enqueue_block_editor_assets', __NAMESPACE__ . '\editor' );

/** The classic editor keeps our elements, and the attributes that they have. */
function classic_editor( $settings ) {
	$inline = array( 'mw-value', 'mw-teeth', 'mw-quantity' );
	$names  = array();
	$valid  = array();
	foreach ( marks()['elements'] as $tag => $attributes ) {
		$names[] = ( in_array( $tag, $inline, true ) ? '~' : '' ) . $tag;
		$all     = array_merge( ON_ANY, $attributes, 'mw-build' === $tag ? array( 'axle-*' ) : array(), array( 'data-*', 'aria-*' ) );
		$valid[] = $tag . '[' . implode( '|', $all ) . ']';
	}
	$add = function ( $name, $more ) use ( &$settings ) {
		$settings[ $name ] = implode( ',', array_filter( array( $settings[ $name ] ?? '', $more ) ) );
	};
	$add( 'custom_elements', implode( ',', $names ) );
	$add( 'extended_valid_elements', implode( ',', $valid ) );
	return $settings;
}
add_filter( 'tiny_mce_before_init', __NAMESPACE__ . '\classic_editor' );
