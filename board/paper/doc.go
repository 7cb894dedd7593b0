// Package paper makes the papers of a board, on letter and A4: what is read in a
// cab, written on with a grease pencil and signed. It is given the moment of
// printing and has no clock; the same input makes the same bytes.
package paper
