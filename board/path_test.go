package board

import "testing"

func TestTheDepartmentFileLiesWhereTheSystemKeepsAUsersData(t *testing.T) {
	for _, c := range []struct {
		goos string
		env  map[string]string
		want string
	}{
		// XDG Base Directory Specification: $XDG_DATA_HOME, by default
		// $HOME/.local/share; a relative path is to be ignored.
		{"linux", map[string]string{"XDG_DATA_HOME": "/data", "HOME": "/home/a"}, "/data/tarpside/department.db"},
		{"linux", map[string]string{"HOME": "/home/a"}, "/home/a/.local/share/tarpside/department.db"},
		{"linux", map[string]string{"XDG_DATA_HOME": "data", "HOME": "/home/a"}, "/home/a/.local/share/tarpside/department.db"},
		{"freebsd", map[string]string{"HOME": "/home/a"}, "/home/a/.local/share/tarpside/department.db"},
		{"darwin", map[string]string{"HOME": "/Users/a", "XDG_DATA_HOME": "/data"}, "/Users/a/Library/Application Support/tarpside/department.db"},
		{"windows", map[string]string{"LocalAppData": `C:\Users\a\AppData\Local`}, `C:\Users\a\AppData\Local\tarpside\department.db`},
		{"windows", map[string]string{"USERPROFILE": `C:\Users\a`}, `C:\Users\a\AppData\Local\tarpside\department.db`},
		{"linux", nil, ""},
		{"darwin", nil, ""},
		{"windows", map[string]string{"HOME": "/home/a"}, ""},
	} {
		got, err := DepartmentFile(c.goos, func(key string) string { return c.env[key] })
		if got != c.want || (err == nil) != (c.want != "") {
			t.Errorf("%s %v: %q, %v; want %q", c.goos, c.env, got, err, c.want)
		}
	}
}
