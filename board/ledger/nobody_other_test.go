//go:build unix && !linux

package ledger

import "testing"

// asNobody runs f. Tests are not run as root here.
func asNobody(_ *testing.T, _ string, f func()) { f() }
