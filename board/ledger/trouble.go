package ledger

import (
	"errors"
	"fmt"
	"path/filepath"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Trouble is an error for the person at the board: what happened, what is
// still safe, and what to do next. Err is the cause, if there is one.
type Trouble struct {
	What, Safe, Do string
	Err            error
}

// Error is the three sentences and the cause.
func (t *Trouble) Error() string {
	s := t.What + " " + t.Safe + " " + t.Do
	if t.Err != nil {
		s += " (" + t.Err.Error() + ")"
	}
	return s
}

// Unwrap gives the cause.
func (t *Trouble) Unwrap() error { return t.Err }

const (
	asItWas     = "Nothing in it was changed."
	loggedSafe  = "Everything logged before is safe; this last act was not logged, not even in part."
	keepRestore = "Keep the file as it is, and restore the newest backup under another name."
)

// code is the SQLite result code behind err without its extension, or 0. A
// page that should be there and is not is damage, not a failing disk.
func code(err error) int {
	var e *sqlite.Error
	switch {
	case !errors.As(err, &e):
		return 0
	case e.Code() == sqlite3.SQLITE_IOERR_SHORT_READ:
		return sqlite3.SQLITE_CORRUPT
	}
	return e.Code() & 0xff
}

// trouble puts an error of SQLite on the file into words. Nil stays nil, and
// a Trouble stays what it is.
func trouble(path string, err error) error {
	var t *Trouble
	if err == nil || errors.As(err, &t) {
		return err
	}
	name := filepath.Base(path)
	t = &Trouble{Err: err}
	switch code(err) {
	case sqlite3.SQLITE_FULL:
		t.What = fmt.Sprintf("The disk is full: nothing more could be written to %s.", name)
		t.Safe, t.Do = loggedSafe, "Free some space, then do it again."
	case sqlite3.SQLITE_NOTADB:
		return notDatabase(path, err)
	case sqlite3.SQLITE_CORRUPT:
		t.What = fmt.Sprintf("%s is damaged or cut short.", name)
		t.Safe, t.Do = "What could be read of it is still in it; backups are not touched.", keepRestore
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM:
		t.What = fmt.Sprintf("%s cannot be written to.", name)
		t.Safe, t.Do = loggedSafe, "Allow writing to the file and to its folder, or copy it to where you may write."
	case sqlite3.SQLITE_CANTOPEN:
		t.What = fmt.Sprintf("%s cannot be opened.", name)
		t.Safe, t.Do = asItWas, "Check that its folder is there and may be read and written. Any file beside it that ends in -wal belongs to it and must go where it goes."
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		t.What = fmt.Sprintf("Another program is writing to %s.", name)
		t.Safe, t.Do = loggedSafe, "Wait a moment and do it again, or close the other program."
	case sqlite3.SQLITE_IOERR:
		t.What = fmt.Sprintf("The disk failed or is full while %s was read or written.", name)
		t.Safe, t.Do = loggedSafe, "Make a backup to another disk, free some space, then do it again."
	default:
		t.What = fmt.Sprintf("%s did not do as it was asked.", name)
		t.Safe, t.Do = loggedSafe, "Do it again; if it happens again, make a backup and restart the program."
	}
	return t
}

func notDatabase(path string, err error) error {
	return &Trouble{
		What: fmt.Sprintf("%s is not a department file, or its beginning is damaged.", filepath.Base(path)),
		Safe: asItWas, Do: "Choose another file. If this was one: " + keepRestore, Err: err,
	}
}

func notOurs(path string) error {
	return &Trouble{
		What: fmt.Sprintf("%s is a file of another program, not a department file.", filepath.Base(path)),
		Safe: asItWas, Do: "Choose another file.",
	}
}

func newer(path string, has, knows int) error {
	return &Trouble{
		What: fmt.Sprintf("%s was written by a newer version of this program (format %d; this one knows up to %d).",
			filepath.Base(path), has, knows),
		Safe: asItWas, Do: "Install the newer version here, or open the file where it was last used.",
	}
}
