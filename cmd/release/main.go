// Command release builds what people download: an archive for each system with
// the program, its man pages and completions, README, the schema of its JSON, its
// license and those of the libraries in it, and SHA256SUMS over all. The same commit
// gives the same bytes, wherever it is built with the same Go.
//
//	go run ./cmd/release [-out DIR]
package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// systems are those an archive is built for.
var systems = []string{"linux/amd64", "linux/arm64", "darwin/amd64", "darwin/arm64", "windows/amd64", "windows/arm64"}

// entry is a file of an archive.
type entry struct {
	name    string
	content []byte
	mode    int64
}

func main() {
	log.SetFlags(0)
	log.SetPrefix("release: ")
	out := flag.String("out", "dist", "the folder for the archives")
	only := flag.String("only", "", "build for this system alone, such as linux/amd64")
	flag.Parse()
	if err := release(*out, *only); err != nil {
		log.Fatal(err)
	}
}

func release(out, only string) error {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	stamp, err := committed()
	if err != nil {
		return err
	}
	common, err := documents()
	if err != nil {
		return err
	}
	var sums bytes.Buffer
	for _, system := range systems {
		if only != "" && system != only {
			continue
		}
		name, content, err := archive(system, common, stamp)
		if err != nil {
			return fmt.Errorf("%s: %w", system, err)
		}
		if err := os.WriteFile(filepath.Join(out, name), content, 0o644); err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(content), name)
		fmt.Printf("%s  %.1f MB\n", name, float64(len(content))/1e6)
	}
	if sums.Len() == 0 {
		return fmt.Errorf("no system %q; use one of: %s", only, strings.Join(systems, ", "))
	}
	return os.WriteFile(filepath.Join(out, "SHA256SUMS"), sums.Bytes(), 0o644)
}

// command runs a command and returns what it printed.
func command(env []string, name string, args ...string) ([]byte, error) {
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		err = fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err)
	}
	return out, err
}

// committed is the time of the commit, which every file of the archives bears.
func committed() (time.Time, error) {
	text, err := command(nil, "git", "log", "-1", "--format=%ct")
	if err != nil {
		return time.Time{}, err
	}
	seconds, err := strconv.ParseInt(strings.TrimSpace(string(text)), 10, 64)
	return time.Unix(seconds, 0).UTC(), err
}

// archive builds the program for a system and packs it with the documents: zip
// for Windows, else tar.gz.
func archive(system string, common []entry, stamp time.Time) (name string, content []byte, err error) {
	goos, goarch, _ := strings.Cut(system, "/")
	binary := "alongside"
	if goos == "windows" {
		binary += ".exe"
	}
	dir, err := os.MkdirTemp("", "release")
	if err != nil {
		return "", nil, err
	}
	defer os.RemoveAll(dir)
	built := filepath.Join(dir, binary)
	if _, err := command([]string{"CGO_ENABLED=0", "GOOS=" + goos, "GOARCH=" + goarch}, "go", "build", "-trimpath", "-ldflags", "-s -w", "-o", built, "./cmd/alongside"); err != nil {
		return "", nil, err
	}
	program, err := os.ReadFile(built)
	if err != nil {
		return "", nil, err
	}
	files := append([]entry{{binary, program, 0o755}}, common...)
	base := "alongside-" + goos + "-" + goarch
	var out bytes.Buffer
	if goos == "windows" {
		err = zipped(&out, base, files, stamp)
		name = base + ".zip"
	} else {
		err = tarred(&out, base, files, stamp)
		name = base + ".tar.gz"
	}
	return name, out.Bytes(), err
}

func zipped(out io.Writer, base string, files []entry, stamp time.Time) error {
	z := zip.NewWriter(out)
	for _, f := range files {
		h := &zip.FileHeader{Name: base + "/" + f.name, Method: zip.Deflate, Modified: stamp}
		h.SetMode(os.FileMode(f.mode))
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = w.Write(f.content)
		}
		if err != nil {
			return err
		}
	}
	return z.Close()
}

func tarred(out io.Writer, base string, files []entry, stamp time.Time) error {
	g := gzip.NewWriter(out)
	t := tar.NewWriter(g)
	for _, f := range files {
		err := t.WriteHeader(&tar.Header{Name: base + "/" + f.name, Mode: f.mode, Size: int64(len(f.content)), ModTime: stamp})
		if err == nil {
			_, err = t.Write(f.content)
		}
		if err != nil {
			return err
		}
	}
	if err := t.Close(); err != nil {
		return err
	}
	return g.Close()
}

// documents are the files that every archive holds beside the program.
func documents() ([]entry, error) {
	var out []entry
	for _, name := range []string{"README.md", "LICENSE", "data/output.schema.json"} {
		content, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		out = append(out, entry{name, content, 0o644})
	}
	text, err := licenses()
	if err != nil {
		return nil, err
	}
	manual, err := manual()
	return append(append(out, entry{"LICENSES-OF-LIBRARIES.txt", text, 0o644}), manual...), err
}

// manual is the man pages and completions, written by the program itself.
func manual() ([]entry, error) {
	dir, err := os.MkdirTemp("", "manual")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	if _, err := command([]string{"ALONGSIDE_MANUAL=" + dir}, "go", "run", "-tags", "manual", "./cmd/alongside"); err != nil {
		return nil, err
	}
	list, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var out []entry
	for _, f := range list {
		content, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			return nil, err
		}
		folder := "completions/"
		if strings.HasSuffix(f.Name(), ".1") {
			folder = "man/"
		}
		out = append(out, entry{folder + f.Name(), content, 0o644})
	}
	return out, nil
}

// module is what `go list` says of the module of a package.
type module struct {
	Path, Version, Dir string
	Main               bool
}

// licenses is the license texts of the libraries that are linked on any system.
func licenses() ([]byte, error) {
	found := map[string]module{}
	for _, system := range systems {
		goos, _, _ := strings.Cut(system, "/")
		list, err := command([]string{"GOOS=" + goos, "CGO_ENABLED=0"}, "go", "list", "-deps", "-json=Module", "./cmd/alongside")
		if err != nil {
			return nil, err
		}
		for d := json.NewDecoder(bytes.NewReader(list)); ; {
			var p struct{ Module *module }
			if err := d.Decode(&p); err == io.EOF {
				break
			} else if err != nil {
				return nil, err
			}
			if p.Module != nil && !p.Module.Main {
				found[p.Module.Path] = *p.Module
			}
		}
	}
	root, err := command(nil, "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	found["Go"] = module{Path: "Go, its standard library", Dir: strings.TrimSpace(string(root))}
	var names []string
	for name := range found {
		names = append(names, name)
	}
	slices.Sort(names)
	var out bytes.Buffer
	for _, name := range names {
		m := found[name]
		texts, err := licenseFiles(m.Dir)
		if err != nil || len(texts) == 0 {
			return nil, fmt.Errorf("%s: no license text in %s %v", m.Path, m.Dir, err)
		}
		fmt.Fprintf(&out, "==== %s\n\n%s\n\n", strings.TrimSpace(m.Path+" "+m.Version), strings.Join(texts, "\n\n"))
	}
	return out.Bytes(), nil
}

// licenseFiles are the texts of a folder by whose names licenses go, and all in a
// folder licenses.
func licenseFiles(dir string) ([]string, error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*"))
	if err != nil {
		return nil, err
	}
	more, err := filepath.Glob(filepath.Join(dir, "licenses", "*"))
	if err != nil {
		return nil, err
	}
	named := regexp.MustCompile(`(?i)^(licen[sc]e|copying|notice)`)
	paths = slices.DeleteFunc(paths, func(path string) bool { return !named.MatchString(filepath.Base(path)) })
	var out []string
	for _, path := range append(paths, more...) {
		if i, err := os.Stat(path); err != nil || i.IsDir() {
			continue
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		out = append(out, strings.TrimSpace(string(content)))
	}
	if len(out) == 0 {
		return readmeLicense(dir)
	}
	return out, nil
}

// readmeLicense is what the README of a library without a license file says of it.
func readmeLicense(dir string) ([]string, error) {
	content, err := os.ReadFile(filepath.Join(dir, "README.md"))
	if err != nil {
		return nil, err
	}
	_, after, found := strings.Cut(string(content), "\n## License\n")
	if !found {
		return nil, nil
	}
	text, _, _ := strings.Cut(after, "\n#")
	return []string{"No license file; its README says: " + strings.TrimSpace(text)}, nil
}
