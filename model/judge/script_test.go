package judge_test

import (
	"slices"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// scripts runs each script on a board of its own with a scene open, and then
// holds the fold of its entries, backwards and twice, against the live board.
func scripts(t *testing.T, table map[string]string) {
	t.Helper()
	for name, script := range table {
		t.Run(name, func(t *testing.T) {
			l := modeltest.New("A", modeltest.Yard())
			l.Open("S", "")
			if bad := modeltest.Script(l, script); bad != "" {
				t.Error(bad)
			}
			twice := slices.Concat(l.Entries, l.Entries)
			slices.Reverse(twice)
			if got, want := modeltest.Picture(model.Fold(twice)), modeltest.Picture(l.State); got != want {
				t.Errorf("the fold differs:\n%s\nlive:\n%s", got, want)
			}
		})
	}
}
