package ledger

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	sqlite3 "modernc.org/sqlite/lib"
)

// appID marks a SQLite file as a department file: "TARP".
const appID = 0x54415250

//go:embed migrations/*.sql
var migrationFiles embed.FS

// migrations are the steps of the file's format; format n is after n of them.
var migrations = readMigrations()

func readMigrations() []string {
	names, _ := fs.Glob(migrationFiles, "migrations/*.sql") // sorted; the pattern is well formed
	var out []string
	for _, name := range names {
		step, err := migrationFiles.ReadFile(name)
		if err != nil {
			panic(err) // it is in the program itself
		}
		out = append(out, string(step))
	}
	return out
}

// dsn names the file to SQLite. The pragmas run on every connection, in this
// order: the wait for a lock first, so that the others have it.
func dsn(path string, params ...string) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") { // C:/...
		path = "/" + path
	}
	return "file://" + (&url.URL{Path: path}).EscapedPath() + "?" +
		strings.Join(append([]string{"_pragma=busy_timeout(5000)"}, params...), "&")
}

func writeDSN(path string) string {
	return dsn(path, "_pragma=journal_mode(WAL)", "_pragma=synchronous(FULL)", "_pragma=foreign_keys(1)",
		"_pragma=secure_delete(1)", "_txlock=immediate") // secure_delete: a blanked note is overwritten
}

func size(path string) int64 {
	st, err := os.Stat(path)
	if err != nil {
		return 0
	}
	return st.Size()
}

// unfinished tells whether another program has the file open, or left it
// without closing it: part of the log is then in the file beside it.
func unfinished(path string) bool {
	_, err := os.Stat(path + "-shm")
	return size(path+"-wal") > 0 || err == nil
}

// look finds out what the file is without touching it or leaving anything
// beside it: its format, 0 for a file with nothing in it or none at all.
func look(path string) (version int, there bool, err error) {
	st, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, false, nil
	case err != nil:
		return 0, false, &Trouble{fmt.Sprintf("%s cannot be looked at.", filepath.Base(path)), asItWas,
			"Check the folder and its permissions.", err}
	case st.IsDir():
		return 0, false, &Trouble{fmt.Sprintf("%s is a folder, not a department file.", filepath.Base(path)), asItWas,
			"Choose a file in it.", nil}
	case st.Size() == 0 && size(path+"-wal") > 0: // SQLite would throw the other file away
		return 0, true, &Trouble{fmt.Sprintf("%s is empty, but %s-wal beside it is not.", filepath.Base(path), filepath.Base(path)),
			"Neither was changed.", keepRestore, nil}
	case st.Size() == 0:
		return 0, true, nil
	case st.Size() < 512: // the smallest page; SQLite would write over less as if it were empty
		return 0, true, notDatabase(path, nil)
	}
	how := []string{"mode=ro"}
	if !unfinished(path) {
		how = append(how, "immutable=1")
	}
	db, err := sql.Open("sqlite", dsn(path, how...))
	if err != nil {
		return 0, true, trouble(path, err)
	}
	defer db.Close()
	var app, objects int
	err = db.QueryRow(`SELECT (SELECT application_id FROM pragma_application_id),
		(SELECT user_version FROM pragma_user_version), (SELECT count(*) FROM sqlite_schema)`).
		Scan(&app, &version, &objects)
	switch {
	case err != nil:
		return 0, true, trouble(path, err)
	case objects > 0 && app != appID:
		return 0, true, notOurs(path)
	case version > len(migrations):
		return 0, true, newer(path, version, len(migrations))
	}
	return version, true, nil
}

// migrate brings the file up to the steps given, each whole or not at all.
func migrate(db *sql.DB, path string, steps []string) error {
	for {
		done, err := migrateOnce(db, path, steps)
		if done || err != nil {
			return trouble(path, err)
		}
	}
}

func migrateOnce(db *sql.DB, path string, steps []string) (done bool, err error) {
	tx, err := db.BeginTx(context.Background(), nil)
	if err != nil {
		return false, err
	}
	defer tx.Rollback() // of no effect after the commit
	var version int
	if err := tx.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return false, err
	}
	if version > len(steps) {
		return false, newer(path, version, len(steps))
	}
	if version == len(steps) {
		// BEGIN IMMEDIATE does not mind a file that cannot be written; this
		// does, and is rolled back.
		_, err := tx.Exec(fmt.Sprintf("PRAGMA user_version = %d", version))
		return true, err
	}
	if _, err := tx.Exec(steps[version]); err != nil {
		return false, err
	}
	mark := fmt.Sprintf("PRAGMA application_id = %d; PRAGMA user_version = %d", appID, version+1)
	if _, err := tx.Exec(mark); err != nil {
		return false, err
	}
	return false, tx.Commit()
}

// openWriter opens the file for writing and brings its format up to date.
func openWriter(path string) (*sql.DB, error) {
	db, err := sql.Open("sqlite", writeDSN(path))
	if err != nil {
		return nil, trouble(path, err)
	}
	db.SetMaxOpenConns(1)
	if err := migrate(db, path, migrations); err != nil {
		db.Close()
		return nil, err
	}
	return db, nil
}

// openReader opens the file for reading. Where SQLite may not write beside
// it and nobody else does, it is read as a file that does not change.
func openReader(path string) (*sql.DB, error) {
	open := func(how ...string) (*sql.DB, error) {
		db, err := sql.Open("sqlite", dsn(path, append(how, "mode=ro")...))
		if err == nil {
			if err = db.QueryRow("SELECT count(*) FROM sqlite_schema").Scan(new(int)); err != nil {
				db.Close()
			}
		}
		return db, err
	}
	db, err := open()
	if err != nil && cannotWrite(err) && !unfinished(path) {
		db, err = open("immutable=1")
	}
	return db, trouble(path, err)
}

// cannotWrite tells whether the file or its folder is for reading only.
func cannotWrite(err error) bool {
	switch code(err) {
	case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
		return true
	}
	return false
}
