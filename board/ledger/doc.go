// Package ledger keeps a department's log in one SQLite file that is only
// ever added to. It stores [model.Entry] values and knows nothing of what
// they mean.
//
// One program writes a file at a time; others read it. What [Ledger.Append]
// took is on the disk when it returns, whole or not at all. Errors that a
// person can do something about are a [*Trouble].
//
// A tap writes one row to one table that has no index, which is as little as
// a durable write can be. The log is therefore kept in the order of arrival;
// the order of the fold is [model.Sorted]'s. What finds things in it is
// written once for a run of entries: table run says where the scene changes
// from one entry to the next and what the version vector was there, and table
// filed lists the ids of all runs but the last, which is short enough to read
// through.
package ledger
