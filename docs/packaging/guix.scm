;; SPDX-License-Identifier: Apache-2.0
;; A Guix package of the tree it lies in: written by reading, not run where this was made.
;; From the top of the tree: guix build -f docs/packaging/guix.scm
(use-modules (guix packages)
             (guix gexp)
             (guix git-download)
             (guix build-system meson)
             ((guix licenses) #:prefix license:)
             (gnu packages pkg-config)
             (gnu packages pcre)
             (gnu packages serialization)
             (gnu packages textutils))

(define top (dirname (dirname (dirname (current-filename)))))

(package
  (name "tapshoal")
  (version "0.1.0")
  (source (local-file top "tapshoal-checkout"
                      #:recursive? #t
                      #:select? (or (git-predicate top) (const #t))))
  (build-system meson-build-system)
  (arguments
   (list #:configure-flags #~(list "-Dtests=false")
         #:build-type "release"
         #:tests? #f)) ;tests are not built; sh tests/run.sh runs them
  (native-inputs (list pkg-config))
  (inputs (list libyaml utf8proc pcre2))
  (home-page "https://example.org/tapshoal")
  (synopsis "Match freshwater fish to the water that was measured")
  (description "Reads what was measured of a tap or a tank, ranks which species that water suits, says
which parameter excludes each of the others, checks plans and running tanks, and proposes communities.")
  (license license:asl2.0))
