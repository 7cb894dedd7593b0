package board

import (
	"errors"
	"strings"
)

// DepartmentFile is where the department file lies if nobody names another:
// tarpside/department.db in the user's data folder. The folder is
// $XDG_DATA_HOME or ~/.local/share (XDG Base Directory Specification),
// ~/Library/Application Support on macOS, %LocalAppData% on Windows. It is an
// error if the environment does not tell where that is; nothing is made.
func DepartmentFile(goos string, getenv func(string) string) (string, error) {
	parts, slash := []string{}, "/"
	switch home := getenv("HOME"); goos {
	case "windows":
		slash = `\`
		if dir := getenv("LocalAppData"); dir != "" {
			parts = []string{dir}
		} else if profile := getenv("USERPROFILE"); profile != "" {
			parts = []string{profile, "AppData", "Local"}
		}
	case "darwin", "ios":
		if home != "" {
			parts = []string{home, "Library", "Application Support"}
		}
	default:
		if dir := getenv("XDG_DATA_HOME"); strings.HasPrefix(dir, "/") { // a relative one is to be ignored
			parts = []string{dir}
		} else if home != "" {
			parts = []string{home, ".local", "share"}
		}
	}
	if len(parts) == 0 {
		return "", errors.New("this computer does not say where your data folder is, so the department file must be named: -db FILE")
	}
	return strings.Join(append(parts, "tarpside", "department.db"), slash), nil
}
