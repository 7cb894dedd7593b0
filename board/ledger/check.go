package ledger

import (
	"database/sql"
	"fmt"
	"maps"

	"tarpside/model"
)

// A Report says what a check of the whole file found.
type Report struct {
	Entries  int
	Problems []string // in words; none where all is well
}

func (r *Report) add(format string, args ...any) {
	r.Problems = append(r.Problems, fmt.Sprintf(format, args...))
}

// Check reads the whole file: SQLite's own checks, the rules that keep the
// log as it was written, every entry, and what is kept beside them. What it
// finds is in the report; the error is for a file that could not be read on.
func (l *Ledger) Check() (Report, error) {
	var r Report
	for _, check := range []func(*Report) error{l.checkPages, l.checkRules, l.checkEntries, l.checkBeside} {
		if err := check(&r); err != nil {
			return r, trouble(l.path, err)
		}
	}
	return r, nil
}

// each runs the query and hands its rows, of text, to f.
func each(db *sql.DB, columns int, f func(row []sql.NullString), query string, args ...any) error {
	rows, err := db.Query(query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	row, to := make([]sql.NullString, columns), make([]any, columns)
	for i := range row {
		to[i] = &row[i]
	}
	for rows.Next() {
		if err := rows.Scan(to...); err != nil {
			return err
		}
		f(row)
	}
	return rows.Err()
}

func (l *Ledger) checkPages(r *Report) error {
	err := each(l.read, 1, func(row []sql.NullString) {
		if row[0].String != "ok" {
			r.add("the file: %s", row[0].String)
		}
	}, "PRAGMA integrity_check")
	if err != nil {
		return err
	}
	return each(l.read, 4, func(row []sql.NullString) {
		r.add("table %s, row %s: what it refers to in %s is missing", row[0].String, row[1].String, row[2].String)
	}, "PRAGMA foreign_key_check")
}

// checkRules compares tables and triggers with those of a new file.
func (l *Ledger) checkRules(r *Report) error {
	fresh, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return err
	}
	defer fresh.Close()
	fresh.SetMaxOpenConns(1) // each connection would have a memory of its own
	if err := migrate(fresh, l.path, migrations); err != nil {
		return err
	}
	rules := func(db *sql.DB) (map[string]string, error) {
		out := map[string]string{}
		err := each(db, 2, func(row []sql.NullString) { out[row[0].String] = row[1].String },
			"SELECT name, sql FROM sqlite_schema")
		return out, err
	}
	want, err := rules(fresh)
	if err != nil {
		return err
	}
	have, err := rules(l.read)
	if err != nil {
		return err
	}
	for name, text := range want {
		if got, ok := have[name]; !ok {
			r.add("the rule %s of the file is missing", name)
		} else if got != text {
			r.add("the rule %s of the file has been changed", name)
		}
	}
	return nil
}

// checkEntries decodes every entry and walks the runs beside them.
func (l *Ledger) checkEntries(r *Report) error {
	rows, err := l.read.Query("SELECT e.n, e.id, e.body, r.n, r.scene, r.vector FROM entry AS e LEFT JOIN run AS r ON r.n = e.n ORDER BY e.n")
	if err != nil {
		return err
	}
	defer rows.Close()
	now := tail{vector: model.Vector{}}
	for rows.Next() {
		var n int
		var id string
		var body []byte
		var run sql.NullInt64
		var scene, vector sql.NullString
		if err := rows.Scan(&n, &id, &body, &run, &scene, &vector); err != nil {
			return err
		}
		r.Entries++
		if n != r.Entries {
			r.add("entry %d is missing", r.Entries)
			r.Entries = n
		}
		e, err := decode(body, "")
		switch {
		case err != nil:
			r.add("entry %d cannot be read: %v", n, err)
			continue
		case e.ID.String() != id:
			r.add("entry %d has two ids, %s and %s", n, id, e.ID)
		case e.Format < 1 || e.Format > model.Format:
			r.add("entry %d is of format %d; this program knows up to %d", n, e.Format, model.Format)
		}
		checkRun(r, n, &e, &now, run.Valid, scene.String, vector.String)
	}
	return rows.Err()
}

// checkRun compares the run that starts at the entry, if one does, with what
// the entries so far add up to.
func checkRun(r *Report, n int, e *model.Entry, now *tail, has bool, scene, vector string) {
	if has {
		v, err := decodeVector(vector)
		if err != nil || !maps.Equal(v, now.vector) {
			r.add("what is noted before entry %d of each device's entries is wrong", n)
		}
		now.scene, now.length = scene, 0
	}
	if !has && now.length == 0 || now.scene != e.Scene {
		r.add("entry %d is not listed under its scene %q", n, e.Scene)
	}
	now.length++
	now.vector[e.Stamp.Device] = max(now.vector[e.Stamp.Device], e.N())
}

// checkBeside looks for what does not go with the entries.
func (l *Ledger) checkBeside(r *Report) error {
	for query, says := range map[string]string{
		"SELECT id FROM entry GROUP BY id HAVING count(*) > 1":                                         "the entry %s is there more than once",
		"SELECT id FROM entry WHERE n < (SELECT max(n) FROM run) AND id NOT IN (SELECT id FROM filed)": "the entry %s would not be found by its id",
		"SELECT id FROM filed WHERE id NOT IN (SELECT id FROM entry)":                                  "there is an id %s without its entry",
		"SELECT entry FROM note WHERE text <> '' AND entry NOT IN (SELECT id FROM entry)":              "there is a note for an entry %s that is not there",
		"SELECT key FROM balance WHERE covers > (SELECT coalesce(max(n), 0) FROM entry)":               "the balance %s is of more entries than there are",
	} {
		err := each(l.read, 1, func(row []sql.NullString) { r.add(says, row[0].String) }, query)
		if err != nil {
			return err
		}
	}
	return nil
}
