"""The words of each language: tables only. A new language is a new file here, entered in languages.py."""
