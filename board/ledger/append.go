package ledger

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"

	"github.com/google/uuid"

	"tarpside/model"
)

// runLength is the most entries in one run, and so the most that are read to
// know the version vector.
const runLength = 128

// A tail is the end of the log: the scene and length of the run being
// written, and how many entries of each device there are.
type tail struct {
	from   int64 // the number of the run's first entry
	scene  string
	length int // 0: no run yet
	vector model.Vector
}

// starts tells whether the entry begins another run.
func (t *tail) starts(e *model.Entry) bool {
	return t.length == 0 || t.length >= runLength || t.scene != e.Scene
}

// add counts the entry, which has the number n in the log.
func (t *tail) add(e *model.Entry, n int64) {
	if t.starts(e) {
		t.from, t.scene, t.length = n, e.Scene, 0
	}
	t.length++
	t.vector[e.Stamp.Device] = max(t.vector[e.Stamp.Device], e.N())
}

// encode is the body that the entry is stored as. The note is not in it.
func encode(e *model.Entry) (string, error) {
	if e.ID == uuid.Nil {
		return "", errors.New("an entry without an id cannot be kept")
	}
	if e.Stamp.Device == "" {
		return "", fmt.Errorf("entry %s has no device in its stamp", e.ID)
	}
	b, err := json.Marshal(e)
	return string(b), err
}

// decode reads what encode wrote.
func decode(body []byte, note string) (model.Entry, error) {
	var e model.Entry
	if err := json.Unmarshal(body, &e); err != nil {
		return model.Entry{}, err
	}
	if e.ID == uuid.Nil || e.Stamp.Device == "" {
		return model.Entry{}, errors.New("an entry without an id or without a device")
	}
	e.Device, e.Note = e.Stamp.Device, note
	return e, nil
}

// Append adds the entries that are not there yet, all of them or, with an
// error, none; they are on the disk when it returns. It returns how many were
// new. An entry whose id is there is left as it was; an id goes with one
// number ([model.Entry.N]) of one device, for good. Balances that a new
// entry makes stale are dropped with it.
func (l *Ledger) Append(entries ...model.Entry) (added int, err error) {
	if err := l.writable(); err != nil {
		return 0, err
	}
	bodies := make([]string, len(entries))
	for i := range entries {
		if bodies[i], err = encode(&entries[i]); err != nil {
			return 0, &Trouble{"An entry could not be put into the form in which it is kept.", loggedSafe,
				"Do it again in other words.", err}
		}
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if len(entries) == 1 && l.plain(&entries[0]) {
		added, err = l.appendPlain(&entries[0], bodies[0])
	} else if len(entries) > 0 {
		added, err = l.appendAll(entries, bodies)
	}
	return added, trouble(l.path, err)
}

// plain tells whether the entry is certainly new and is one row of one table.
func (l *Ledger) plain(e *model.Entry) bool {
	return e.Note == "" && l.tail.isNext(e) && !l.tail.starts(e) && e.Stamp.Compare(l.balance) > 0
}

// isNext tells whether the entry comes after all that are there of its
// device, and so is not there itself.
func (t *tail) isNext(e *model.Entry) bool { return e.N() > t.vector[e.Stamp.Device] }

// appendPlain adds a plain entry: one statement, which is its own transaction.
func (l *Ledger) appendPlain(e *model.Entry, body string) (int, error) {
	if _, err := l.insert.Exec(e.ID.String(), body); err != nil {
		return 0, err
	}
	l.tail.add(e, 0) // it starts no run, so its number is not asked for
	return 1, nil
}

// appendAll adds entries in one transaction.
func (l *Ledger) appendAll(entries []model.Entry, bodies []string) (added int, err error) {
	tail, balance := l.tail, l.balance
	tail.vector = l.tail.vector.Clone()
	err = l.transact(func(tx *sql.Tx) error {
		for i := range entries {
			e := &entries[i]
			if !tail.isNext(e) {
				if there, err := has(tx, e.ID); there || err != nil {
					if err != nil {
						return err
					}
					continue
				}
			}
			n, err := l.appendOne(tx, e, bodies[i], &tail)
			if err != nil {
				return err
			}
			if e.Stamp.Compare(balance) <= 0 {
				if balance, err = dropBalances(tx, e.Stamp); err != nil {
					return err
				}
			}
			tail.add(e, n)
			added++
		}
		return nil
	})
	if err != nil {
		return 0, err
	}
	l.tail, l.balance = tail, balance
	return added, nil
}

// appendOne adds the entry, its note, and the run that it starts. It returns
// the entry's number in the log.
func (l *Ledger) appendOne(tx *sql.Tx, e *model.Entry, body string, t *tail) (int64, error) {
	res, err := tx.Stmt(l.insert).Exec(e.ID.String(), body)
	if err != nil {
		return 0, err
	}
	n, err := res.LastInsertId()
	if err == nil && t.starts(e) {
		err = startRun(tx, n, e.Scene, t)
	}
	if err == nil && e.Note != "" {
		_, err = tx.Exec("INSERT INTO note (entry, text) VALUES (?, ?)", e.ID.String(), e.Note)
	}
	return n, err
}

// startRun begins a run at the entry with the number n and files the ids of
// the run before.
func startRun(tx *sql.Tx, n int64, scene string, before *tail) error {
	vector, err := json.Marshal(before.vector)
	if err != nil {
		return err
	}
	if _, err := tx.Exec("INSERT INTO run (n, scene, vector) VALUES (?, ?, ?)", n, scene, string(vector)); err != nil {
		return err
	}
	// Written past this package, an id could be there twice: Check says so.
	_, err = tx.Exec("INSERT OR IGNORE INTO filed (id) SELECT id FROM entry WHERE n >= ? AND n < ?", before.from, n)
	return err
}

// transact runs f in one transaction. The caller holds l.mu.
func (l *Ledger) transact(f func(*sql.Tx) error) error {
	tx, err := l.write.BeginTx(context.Background(), nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // of no effect after the commit
	if err := f(tx); err != nil {
		return err
	}
	return tx.Commit()
}

// Blank takes the text of an entry's note away for good, from the file and
// from the log beside it. It may come before the entry does.
func (l *Ledger) Blank(id uuid.UUID) error {
	if err := l.writable(); err != nil {
		return err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	err := l.transact(func(tx *sql.Tx) error {
		// The first is ignored where there is a note, the second changes nothing where there is none.
		if _, err := tx.Exec("INSERT INTO note (entry, text) VALUES (?, '')", id.String()); err != nil {
			return err
		}
		_, err := tx.Exec("UPDATE note SET text = '' WHERE entry = ?", id.String())
		return err
	})
	if err == nil {
		err = l.flush()
	}
	return trouble(l.path, err)
}

// flush moves all that SQLite keeps beside the file into it, so that no old
// text stays behind there.
func (l *Ledger) flush() error {
	var busy, log, moved int
	if err := l.write.QueryRow("PRAGMA wal_checkpoint(TRUNCATE)").Scan(&busy, &log, &moved); err != nil {
		return err
	}
	if busy != 0 {
		return &Trouble{fmt.Sprintf("The note is blank, but another program still reads %s.", filepath.Base(l.path)),
			"The board no longer shows the old text; a trace of it may stay on the disk until both programs are closed.",
			"Close the other program, then this one.", nil}
	}
	return nil
}

// SetSetting keeps a value under a key.
func (l *Ledger) SetSetting(key, value string) error {
	if err := l.writable(); err != nil {
		return err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	_, err := l.write.Exec("INSERT INTO setting (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value", key, value)
	return trouble(l.path, err)
}
