package ledger

import (
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"path/filepath"
	"slices"

	"github.com/google/uuid"

	"tarpside/model"
)

const entryColumns = "SELECT e.n, e.body, coalesce(note.text, '') FROM entry AS e LEFT JOIN note ON note.entry = e.id "

// Entries yields the entries after the first n, in the order of arrival:
// Entries(0) is all of them. After an error there are no more. The log may be
// added to meanwhile; what is added then is not yielded.
func (l *Ledger) Entries(n int) iter.Seq2[model.Entry, error] {
	return l.entries(entryColumns+"WHERE e.n > ? ORDER BY e.n", n)
}

func (l *Ledger) entries(query string, args ...any) iter.Seq2[model.Entry, error] {
	return func(yield func(model.Entry, error) bool) {
		rows, err := l.read.Query(query, args...)
		if err != nil {
			yield(model.Entry{}, trouble(l.path, err))
			return
		}
		defer rows.Close()
		var n int64
		var body sql.RawBytes
		var note string
		for rows.Next() {
			var e model.Entry
			if err = rows.Scan(&n, &body, &note); err == nil {
				e, err = decode(body, note)
			}
			if err != nil {
				err = l.badEntry(n, err)
			}
			if !yield(e, err) || err != nil {
				return
			}
		}
		if err := rows.Err(); err != nil {
			yield(model.Entry{}, trouble(l.path, err))
		}
	}
}

func (l *Ledger) badEntry(n int64, err error) error {
	return &Trouble{fmt.Sprintf("Entry %d of %s cannot be read.", n, filepath.Base(l.path)),
		"The other entries are not touched by this.", keepRestore, err}
}

// ByScene is the entries of one scene ("" for those of none) in the order of
// their stamps.
func (l *Ledger) ByScene(scene string) ([]model.Entry, error) {
	var out []model.Entry
	for e, err := range l.entries(`SELECT e.n, e.body, coalesce(note.text, '') FROM run AS r
		CROSS JOIN entry AS e ON e.n >= r.n AND
			e.n < coalesce((SELECT min(later.n) FROM run AS later WHERE later.n > r.n), 9223372036854775807)
		LEFT JOIN note ON note.entry = e.id WHERE r.scene = ?`, scene) {
		if err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	slices.SortFunc(out, func(a, b model.Entry) int { return a.Stamp.Compare(b.Stamp) })
	return out, nil
}

// Scenes names every scene that has an entry, in the order of their first
// ones' arrival.
func (l *Ledger) Scenes() ([]string, error) {
	rows, err := l.read.Query("SELECT scene FROM run WHERE scene <> '' GROUP BY scene ORDER BY min(n)")
	if err != nil {
		return nil, trouble(l.path, err)
	}
	defer rows.Close()
	var out []string
	for rows.Next() {
		var s string
		if err := rows.Scan(&s); err != nil {
			return nil, trouble(l.path, err)
		}
		out = append(out, s)
	}
	return out, trouble(l.path, rows.Err())
}

// Has tells whether the entry is there.
func (l *Ledger) Has(id uuid.UUID) (bool, error) {
	there, err := has(l.read, id)
	return there, trouble(l.path, err)
}

// A querier is a database or a transaction.
type querier interface {
	QueryRow(query string, args ...any) *sql.Row
}

func has(q querier, id uuid.UUID) (there bool, err error) {
	err = q.QueryRow(`SELECT EXISTS (SELECT 1 FROM filed WHERE id = ?1) OR
		EXISTS (SELECT 1 FROM entry WHERE n >= (SELECT max(n) FROM run) AND id = ?1)`, id.String()).Scan(&there)
	return there, err
}

// Count is how many entries there are.
func (l *Ledger) Count() (int, error) {
	var n int // none is ever removed, so the last one's number is their number
	err := l.read.QueryRow("SELECT coalesce(max(n), 0) FROM entry").Scan(&n)
	return n, trouble(l.path, err)
}

// Vector is the highest number of an entry that is there of each device. It
// costs the same however long the log is.
func (l *Ledger) Vector() (model.Vector, error) {
	if l.why == "" {
		l.mu.Lock()
		defer l.mu.Unlock()
		return l.tail.vector.Clone(), nil
	}
	t, err := l.readTail() // another program may have added to it
	return t.vector, trouble(l.path, err)
}

// readTail reads the last run.
func (l *Ledger) readTail() (tail, error) {
	t := tail{vector: model.Vector{}}
	var vector string
	err := l.read.QueryRow("SELECT n, scene, vector FROM run ORDER BY n DESC LIMIT 1").Scan(&t.from, &t.scene, &vector)
	if errors.Is(err, sql.ErrNoRows) {
		return t, nil
	}
	if err == nil {
		t.vector, err = decodeVector(vector)
	}
	if err != nil {
		return t, err
	}
	rows, err := l.read.Query("SELECT n, body FROM entry WHERE n >= ? ORDER BY n", t.from)
	if err != nil {
		return t, err
	}
	defer rows.Close()
	for rows.Next() {
		var n int64
		var body sql.RawBytes
		if err := rows.Scan(&n, &body); err != nil {
			return t, err
		}
		e, err := decode(body, "")
		if err != nil {
			return t, l.badEntry(n, err)
		}
		t.add(&e, n)
	}
	return t, rows.Err()
}

func decodeVector(text string) (model.Vector, error) {
	v := model.Vector{}
	err := json.Unmarshal([]byte(text), &v)
	return v, err
}

// Setting is the value kept under a key, "" where there is none.
func (l *Ledger) Setting(key string) (string, error) {
	var value string
	err := l.read.QueryRow("SELECT value FROM setting WHERE key = ?", key).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return value, trouble(l.path, err)
}
