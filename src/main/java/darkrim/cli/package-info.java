/** The commands. Thin: options in, text out, exit codes; no physics. */
package darkrim.cli;
