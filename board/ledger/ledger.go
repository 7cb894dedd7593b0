package ledger

import (
	"database/sql"
	"errors"
	"fmt"
	"path/filepath"
	"sync"

	"github.com/gofrs/flock"
	_ "modernc.org/sqlite" // the driver

	"tarpside/model"
)

// Options say how to open a file.
type Options struct {
	ReadOnly bool // do not write, whether or not it could be done
	MaxPages int  // pages that the file may have before the disk counts as full; 0 leaves it to the disk
}

// A Ledger is an open department file. It may be used by several goroutines.
type Ledger struct {
	path string
	why  string // why it is read-only; empty where it is not
	lock *flock.Flock
	read *sql.DB

	mu      sync.Mutex // guards what follows, all of it the writer's
	write   *sql.DB
	insert  *sql.Stmt
	tail    tail
	balance model.Stamp // of the latest balance
}

// Open opens the department file, or makes it if it is not there. If it
// cannot be written, because another program writes it or because the disk
// does not allow it, it is opened for reading: see [Ledger.ReadOnly]. A file
// that is not a department file, is damaged, or is of a newer version is left
// as it is, and the error is a [*Trouble].
func Open(path string, opts Options) (*Ledger, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	version, there, err := look(path)
	if err != nil {
		return nil, err
	}
	l := &Ledger{path: path}
	if opts.ReadOnly {
		l.why = "It was opened for reading only."
	} else if err := l.openToWrite(there, opts.MaxPages); err != nil {
		l.Close()
		return nil, err
	}
	if l.why != "" && version < len(migrations) {
		// Another program may have been making it at the time of the first look.
		if version, there, err = look(path); err != nil {
			l.Close()
			return nil, err
		}
		if version < len(migrations) {
			l.Close()
			return nil, unreadable(path, there, l.why)
		}
	}
	if l.read, err = openReader(path); err == nil && l.why == "" {
		err = l.loadWriter()
	}
	if err != nil {
		l.Close()
		return nil, trouble(path, err)
	}
	return l, nil
}

func unreadable(path string, there bool, why string) error {
	name := filepath.Base(path)
	if !there {
		return &Trouble{fmt.Sprintf("There is no file %s.", name), "Nothing was made or changed.",
			"Check the name and the folder that it lies in. " + why, nil}
	}
	return &Trouble{fmt.Sprintf("%s is empty or of an older version.", name), asItWas,
		"Open it once where it may be written; it is then brought up to date. " + why, nil}
}

// openToWrite takes the lock and opens the file, or says in l.why what stands
// in the way. Where there is no file to read instead, that is an error.
func (l *Ledger) openToWrite(there bool, maxPages int) error {
	name := filepath.Base(l.path)
	lock := flock.New(l.path + ".lock")
	got, err := lock.TryLock()
	if err == nil && !got {
		l.why = fmt.Sprintf("Another program has %s open for writing. You can look at everything here; log there, or close it there and open it here again.", name)
		return nil
	}
	if err == nil {
		l.lock = lock
		l.write, err = openWriter(l.path)
		if err != nil && !cannotWrite(err) {
			return err
		}
		if err == nil && maxPages > 0 {
			_, err = l.write.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", maxPages))
		}
	}
	if err == nil {
		return nil
	}
	if !there {
		return &Trouble{fmt.Sprintf("%s could not be made.", name), "Nothing was changed.",
			"Check that the folder is there and that you may write in it.", err}
	}
	l.why = fmt.Sprintf("%s or its folder may not be written to. You can look at everything; to log, copy it to where you may write.", name)
	return l.unlock()
}

func (l *Ledger) unlock() error {
	if l.lock == nil {
		return nil
	}
	err := l.lock.Unlock()
	l.lock = nil
	return err
}

// loadWriter reads what Append needs to know of the end of the log.
func (l *Ledger) loadWriter() (err error) {
	if l.insert, err = l.write.Prepare("INSERT INTO entry (id, body) VALUES (?, ?)"); err != nil {
		return err
	}
	if l.tail, err = l.readTail(); err != nil {
		return err
	}
	l.balance, err = latestStamp(l.read)
	return err
}

// ReadOnly tells whether the file can only be read, and why in words.
func (l *Ledger) ReadOnly() (bool, string) { return l.why != "", l.why }

// Path is the file's absolute path.
func (l *Ledger) Path() string { return l.path }

// Close closes the file and lets another program write it.
func (l *Ledger) Close() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	var errs []error
	if l.read != nil {
		errs = append(errs, l.read.Close())
	}
	if l.insert != nil {
		errs = append(errs, l.insert.Close())
	}
	if l.write != nil { // last, so that SQLite can bring the file together
		errs = append(errs, l.write.Close())
	}
	errs = append(errs, l.unlock())
	return trouble(l.path, errors.Join(errs...))
}

// writable is the trouble to report where the file can only be read.
func (l *Ledger) writable() error {
	if l.why == "" {
		return nil
	}
	return &Trouble{fmt.Sprintf("%s is open for reading only.", filepath.Base(l.path)), loggedSafe, l.why, nil}
}
