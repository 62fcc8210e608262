package main

import (
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// fileFlags name the files that commands write.
var fileFlags = []string{"output", "chart", "trace", "resume"}

// apart refuses a file to write that is one to read, or that is named twice: work or input would be lost. Files are told apart by what
// they are, not by how they are written.
func apart(cmd *cobra.Command, args []string) error {
	if err := noneEmpty(cmd); err != nil {
		return err
	}
	return apartFrom(cmd, args)
}

// apartFrom refuses to write over files that are read, or over one another.
func apartFrom(cmd *cobra.Command, read []string) error {
	type named struct{ path, what string }
	var files []named
	for _, path := range read {
		if path == "-" {
			path = os.Stdin.Name() // which may be a file, too
		}
		files = append(files, named{path, "the file that is read"})
	}
	for _, flag := range fileFlags {
		f := cmd.Flags().Lookup(flag)
		if f == nil || f.Value.String() == "" || f.Value.String() == "-" {
			continue
		}
		path := f.Value.String()
		for _, other := range files {
			if sameFile(path, other.path) {
				return usage("give it a name of its own", "--%s %s is %s", flag, path, other.what)
			}
		}
		files = append(files, named{path, "the file of --" + flag})
	}
	return nil
}

// noneEmpty refuses a flag that was given without a value: absent and empty are two things.
func noneEmpty(cmd *cobra.Command) (err error) {
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if f.Value.Type() == "string" && f.Value.String() == "" && err == nil {
			err = usage("give it one, or leave the flag out", "--%s has no value", f.Name)
		}
	})
	return err
}

// sameFile says that two paths lead to one regular file, or would.
func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	if errX == nil && errY == nil {
		return x.Mode().IsRegular() && os.SameFile(x, y)
	}
	return errX != nil && errY != nil && whole(a) == whole(b)
}

// whole is a path from the root, links of its folder resolved.
func whole(path string) string {
	full, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	if folder, err := filepath.EvalSymlinks(filepath.Dir(full)); err == nil {
		return filepath.Join(folder, filepath.Base(full))
	}
	return full
}
