// Package ledger keeps a department's log in one SQLite file that is only
// ever added to. It stores [model.Entry] values and knows nothing of what
// they mean.
//
// One program writes a file at a time; others read it. What [Ledger.Append]
// took is on the disk when it returns, whole or not at all. Errors that a
// person can do something about are a [*Trouble].
//
// A tap writes to the log and to the index of ids and to nothing else. The
// log is therefore kept in the order of arrival; the order of the stamps,
// which is not quite the order of the fold either, is [model.Sorted]'s. Table
// run says where the scene changes from one entry to the next, which is
// enough to find a scene, and to know the version vector, without a look at
// the rest.
package ledger
