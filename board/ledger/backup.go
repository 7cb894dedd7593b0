package ledger

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"modernc.org/sqlite"
)

// Backup writes a copy of the file, as it is at this moment, to a path where
// there is nothing yet, and checks the copy. Others may go on adding
// meanwhile. The copy is a department file like this one: opening it for
// reading and making a backup of it is how it is restored.
func (l *Ledger) Backup(path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	name := filepath.Base(path)
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return &Trouble{fmt.Sprintf("There is a file %s already.", name), "Neither it nor the department file was changed.",
			"Choose another name for the copy.", nil}
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		return &Trouble{fmt.Sprintf("The copy %s could not be made.", name), "The department file is as it was.",
			"Check that the folder is there, may be written to and has room.", err}
	}
	if err = l.copyTo(path); err == nil {
		err = sound(path)
	}
	if err != nil {
		for _, end := range []string{"", "-journal", "-wal", "-shm"} {
			os.Remove(path + end) // ours: there was nothing here before
		}
		return &Trouble{fmt.Sprintf("The copy %s could not be finished and was removed.", name),
			"The department file is as it was.", "Check that the disk for the copy has room, or choose another.", err}
	}
	return nil
}

// copyTo copies in one step, so the copy is of one moment.
func (l *Ledger) copyTo(path string) error {
	ctx := context.Background()
	conn, err := l.read.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	return conn.Raw(func(driver any) error {
		source, ok := driver.(interface {
			NewBackup(string) (*sqlite.Backup, error)
		})
		if !ok {
			return errors.New("this build of SQLite makes no backups")
		}
		b, err := source.NewBackup(dsn(path, "_pragma=synchronous(FULL)"))
		if err != nil {
			return err
		}
		_, err = b.Step(-1)
		return errors.Join(err, b.Finish())
	})
}

// sound reads the whole copy once.
func sound(path string) error {
	if _, _, err := look(path); err != nil {
		return err
	}
	db, err := sql.Open("sqlite", dsn(path, "mode=ro", "immutable=1"))
	if err != nil {
		return err
	}
	defer db.Close()
	var said string
	if err := db.QueryRow("PRAGMA quick_check(1)").Scan(&said); err != nil {
		return err
	}
	if said != "ok" {
		return errors.New(said)
	}
	return nil
}
