package stores

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"

	"tarpside/model"
)

// WriteTo writes one table, named without ".csv", header first.
func WriteTo(w io.Writer, table string, d *model.Department) error {
	for _, t := range tables {
		if t.id() == table {
			return writeRecords(w, t.records(d))
		}
	}
	return fmt.Errorf("there is no table %q in the inventory", table)
}

// Write writes all tables into a folder, which it makes if need be. Each file
// is whole at any moment: all are written beside their places and made safe
// on disk first, and only then take the places of the old ones.
func Write(dir string, d *model.Department) (err error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the tables were not saved, nothing has changed: %w", err)
	}
	var beside []string
	defer func() {
		for _, name := range beside {
			if name != "" {
				os.Remove(name)
			}
		}
	}()
	for _, t := range tables {
		name, err := writeBeside(dir, t, d)
		if err != nil {
			return fmt.Errorf("%s could not be written, the tables in %s are as they were: %w", file(t.id()), dir, err)
		}
		beside = append(beside, name)
	}
	for i, t := range tables {
		if err := os.Rename(beside[i], filepath.Join(dir, file(t.id()))); err != nil {
			return fmt.Errorf("%s could not be replaced and is as it was, the tables before it are new; save again: %w", file(t.id()), err)
		}
		beside[i] = ""
	}
	return syncDir(dir)
}

// writeBeside writes a table under a name of its own and makes it safe.
func writeBeside(dir string, t anyTable, d *model.Department) (name string, err error) {
	f, err := os.CreateTemp(dir, "."+t.id()+"-*.tmp")
	if err != nil {
		return "", err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if err = writeRecords(f, t.records(d)); err != nil {
		return "", err
	}
	if err = f.Chmod(0o644); err != nil {
		return "", err
	}
	if err = f.Sync(); err != nil {
		return "", err
	}
	return f.Name(), f.Close()
}

// syncDir makes the new names safe. Windows has no such call for a folder and
// keeps names in its own journal.
func syncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}
