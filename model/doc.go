// Package model holds what things are and all the arithmetic about them:
// the department, the entries of its log, and the fold that turns entries
// into a State. Everything in it is a pure function of its arguments: no
// clock, no files, no randomness.
//
// Equipment is kept the way money is. Each [Item] is a line of an account: a
// quantity that its rig owns, always spread over [Place]s. An [Entry] is one
// act of one person; it holds moves of a quantity from one place to another.
// One law follows: for every line the quantities over all places add up to
// what the rig owns ([State.Proof], [State.Unbalanced]).
//
// The judging of an act, where it is made, is in model/judge; the fold
// refuses nothing, so an entry that was taken once always applies.
package model
