;;; plate.el --- Platewright in Emacs 29 or later, or in 28 with eglot  -*- lexical-binding: t -*-
;; Goes to ~/.emacs.d/lisp; init.el loads it.

;; Words: begin. `UPDATE=1 npx vitest run tests/client/editors.test.ts` writes them.
(defconst plate-statements '("setup" "inventory" "use" "beam" "measured" "moved" "expect" "aim" "accept" "let" "variant" "shot" "process"))
(defconst plate-phrased '("aim" "expect" "accept" "measured" "moved"))
(defconst plate-clauses '("at" "on" "beyond" "by" "facing" "heading" "tilted" "turning" "from" "to" "for" "std" "x"))
(defconst plate-kinds '("half-wave plate" "ground glass" "attenuator" "black card" "collimator" "beam stop" "fill card" "polarizer" "aperture" "diffuser" "exposure" "hologram" "splitter" "spreader" "shutter" "mirror" "object" "screen" "string" "viewer" "laser" "meter" "plate" "lamp" "lens" "room" "slit" "wall"))
(defconst plate-functions '("sqrt" "abs" "min" "max" "sin" "cos" "tan" "asin" "acos" "atan"))
;; Words: end.

(defvar plate-mode-syntax-table
  (let ((table (make-syntax-table)))
    ;; Names hold hyphens and dots. Texts and comments end with their line, whatever it holds, so that they are told by patterns.
    (dolist (sign '(?- ?. ?_)) (modify-syntax-entry sign "_" table))
    (dolist (sign '(?\" ?/ ?' ?* ?+ ?± ?µ ?° ?%)) (modify-syntax-entry sign "." table))
    table))

(defconst plate-fact
  (let ((word "[[:alpha:]][^] \t\n:{}()\",/]*"))
    (concat "^[ \t]*\\(" word "\\(?:[ \t]+" word "\\)*\\)\\(?:[ \t]+[0-9.]+\\)?[ \t]*:")))

(defconst plate-font-lock
  (let* ((digits "\\(?:[0-9]+\\(?:\\.[0-9]+\\)?\\|\\.[0-9]+\\)")
         (number (concat digits "\\(?:[eE][-+]?[0-9]+\\)?"))
         (unit "\\([[:alpha:]µ°%′″][[:alnum:]µ°%²³¹⁰⁴⁻/·^-]*\\)")
         (clauses (concat "\\_<" (regexp-opt plate-clauses t) "\\_>")))
    ;; A sign of inches opens no text.
    `(("[0-9]\"\\|\\(///.*\\)\\|\\(//.*\\)\\|\\(\"\\(?:[^\"\\\n]\\|\\\\.\\)*\"?\\)"
       (1 font-lock-doc-face nil t) (2 font-lock-comment-face nil t) (3 font-lock-string-face nil t))
      (plate-find-fact 1 font-lock-variable-name-face)
      (,clauses 1 font-lock-builtin-face)
      ;; What is wanted is named behind these.
      ("^[ \t]*\\(?:aim\\|expect\\)\\_>" ("\\=[ \t]*\\([[:alpha:]]\\(?:\\sw\\|\\s_\\)*\\)" nil nil (1 font-lock-variable-name-face)))
      (,(concat "^[ \t]*" (regexp-opt plate-kinds t) "\\(?:[ \t]\\|$\\)") 1 font-lock-type-face)
      (,(concat "^[ \t]*" (regexp-opt plate-statements t) "\\(?:[ \t]\\|$\\)") 1 font-lock-keyword-face)
      (,(concat "\\_<" (regexp-opt plate-functions t) "(") 1 font-lock-function-name-face)
      ("\\_<[0-9]\\{4\\}-[0-9][0-9]-[0-9][0-9]\\(?:T[0-9][0-9]:[0-9][0-9]\\)?\\_>" 0 font-lock-constant-face)
      (,(concat "\\(?:\\_<-?" number "\\|[)?]\\)[ \t]*" unit) 1 font-lock-type-face)
      (,(concat "\\_<-?\\(" number "\\(?::" digits "\\)?\\)") 1 font-lock-constant-face)
      ("?" 0 font-lock-warning-face)))
  "Colours of a page, the first that fits a word.")

(defun plate-find-fact (limit)
  "The next phrase before a colon, up to LIMIT; goals and readings begin with a word of their own."
  (let (found)
    (while (and (not found) (re-search-forward plate-fact limit t))
      (setq found (save-match-data
                    (not (string-match-p (concat "\\`" (regexp-opt plate-phrased) "[ \t]+[[:alpha:]]") (match-string 1))))))
    found))

(define-derived-mode plate-mode prog-mode "Plate"
  "A hologram recording setup."
  (setq-local comment-start "// " comment-start-skip "//+[ \t]*" tab-width 2 indent-tabs-mode nil
              font-lock-defaults '(plate-font-lock t)))

(add-to-list 'auto-mode-alist '("\\.plate\\'" . plate-mode))
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(plate-mode . ("platewright" "lsp" "--stdio"))))
(when (require 'eglot nil t)
  (add-hook 'plate-mode-hook #'eglot-ensure))

(provide 'plate)
;;; plate.el ends here
