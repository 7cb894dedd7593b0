package board

import (
	"io/fs"
	"time"

	"tarpside/assets"
	"tarpside/board/stores"
)

// DemoStart is when the demo scene began if today is the day: 18:50, as its
// rows say.
func DemoStart(today time.Time) time.Time {
	y, m, d := today.Date()
	return time.Date(y, m, d, 18, 50, 0, 0, today.Location())
}

// DemoTables are the tables of the demo department.
func DemoTables() (fs.FS, error) { return fs.Sub(assets.Demo, "demo") }

// DemoScene is the demo scene, row by row.
func DemoScene() ([]stores.SceneRow, error) {
	data, err := assets.Demo.ReadFile("demo/scene.csv")
	if err != nil {
		return nil, err
	}
	rows, problems := stores.ReadScene("scene.csv", data)
	return rows, problems.Err()
}

// OpenDemo makes a department file with the demo department, and its scene
// logged up to a minute. A minute below 0 leaves the scene out.
func OpenDemo(path string, start time.Time, minute int, opts Options) (*Board, error) {
	b, err := Open(path, opts)
	if err != nil {
		return nil, err
	}
	if err := b.fillDemo(start, minute); err != nil {
		b.Close()
		return nil, err
	}
	return b, nil
}

func (b *Board) fillDemo(start time.Time, minute int) error {
	tables, err := DemoTables()
	if err != nil {
		return err
	}
	if _, err := b.LoadStores(tables, "", false); err != nil {
		return err
	}
	rows, err := DemoScene()
	if err != nil {
		return err
	}
	for i, r := range rows {
		if r.Minute > minute {
			rows = rows[:i]
			break
		}
	}
	return b.Replay(rows, start, nil)
}
