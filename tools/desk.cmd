@echo off
rem Opens the window by a double click; a capture dropped on it is opened (Windows).
call "%~dp0toothmark.cmd" desk %*
if errorlevel 1 pause
