package main

import (
	"os/exec"
	"strings"
	"testing"
)

// sqlite runs the sqlite3 command line on a file.
func sqlite(t testing.TB, db, script string) string {
	t.Helper()
	path, err := exec.LookPath("sqlite3")
	if err != nil {
		t.Fatal("this test needs the sqlite3 command line (the package sqlite3 of most systems): it shows that the file can be read without this program")
	}
	cmd := exec.Command(path, "-bail", "-header", "-csv", db)
	cmd.Stdin = strings.NewReader(script)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("sqlite3: %v\n%s", err, out)
	}
	return string(out)
}

// proofQuery adds up the books from the log alone: each line starts in its
// home place with what its rig owns, and the moves do the rest.
const proofQuery = `
WITH line AS (
    SELECT json_extract(i.value, '$.ID') AS item, json_extract(i.value, '$.Name') AS name,
           json_extract(i.value, '$.Quantity') AS quantity,
           CASE WHEN coalesce(json_extract(i.value, '$.Kit'), '') = '' THEN 'home' ELSE 'kit' END AS own
    FROM entry AS e, json_each(e.body, '$.stores.put.Items') AS i
),
book AS (
    SELECT item, own AS place, quantity FROM line
    UNION ALL
    SELECT item, substr(to_place, 1, instr(to_place || ':', ':') - 1), quantity FROM move
    UNION ALL
    SELECT item, substr(from_place, 1, instr(from_place || ':', ':') - 1), -quantity FROM move
)
SELECT line.item, line.name, line.quantity,
       sum(book.quantity * (place = 'home')) AS home, sum(book.quantity * (place = 'tarp')) AS tarp,
       sum(book.quantity * (place = 'at')) AS at, sum(book.quantity * (place = 'kit')) AS kit,
       sum(book.quantity * (place = 'with')) AS "with", sum(book.quantity * (place = 'riding')) AS riding,
       sum(book.quantity * (place = 'charging')) AS charging, sum(book.quantity * (place = 'bagged')) AS bagged,
       sum(book.quantity * (place = 'used')) AS used, sum(book.quantity * (place = 'unexplained')) AS unexplained,
       sum(book.quantity * (place = 'lost')) AS lost
FROM line JOIN book USING (item)
GROUP BY line.item ORDER BY line.item;`

func TestOneQueryOfAnotherProgramGivesTheProof(t *testing.T) {
	for _, scene := range []string{demoScene, wanted + "/scenes/06_homeward/scene.csv", wanted + "/scenes/02_devices/scene.csv"} {
		d, _ := playedDesk(t, scene, "")
		want := d.csv("proof")
		same(t, scene, table(t, sqlite(t, d.db, proofQuery)), want)
	}
}

func TestAnotherProgramCannotRewriteTheLog(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "14")
	before := d.must("-csv", "where")
	for _, script := range []string{"DELETE FROM entry WHERE n = 5;", "UPDATE entry SET body = '{}' WHERE n = 5;",
		"INSERT OR REPLACE INTO entry (n, id, body) SELECT n, id, body FROM entry WHERE n = 5;"} {
		cmd := exec.Command("sqlite3", "-bail", d.db)
		cmd.Stdin = strings.NewReader(script)
		if out, err := cmd.CombinedOutput(); err == nil || !strings.Contains(string(out), "log a correction") {
			t.Errorf("%s: %v, %s", script, err, out)
		}
	}
	d.must("verify")
	if d.must("-csv", "where") != before {
		t.Error("the board is another")
	}
}
