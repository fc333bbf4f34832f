@echo off
rem Starts Toothmark from any directory. Builds it when there is no build yet.
rem Needs a JDK 17 or later, and Maven for the build. After an update, delete analyser\target.
setlocal
set "root=%~dp0.."
set "jar=%root%\analyser\target\toothmark.jar"
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
where "%java%" >nul 2>nul || if not exist "%java%" (
  echo toothmark: no java found; install a JDK 17 or later, or set JAVA_HOME 1>&2
  exit /b 1
)
if not exist "%jar%" (
  where mvn >nul 2>nul || (
    echo toothmark: no mvn found; install Maven 3.6.3 or later for the first start 1>&2
    exit /b 1
  )
  echo toothmark: building, first start ... 1>&2
  pushd "%root%"
  call mvn -B -q -pl analyser -am -DskipTests -Dspotless.check.skip package 1>&2
  if errorlevel 1 (
    popd
    echo toothmark: the build failed; the lines above say why 1>&2
    exit /b 1
  )
  popd
)
set "heap="
if "%~1"=="desk" set "heap=-Xmx512m"
"%java%" -XX:+UseSerialGC %heap% %TOOTHMARK_JAVA_OPTIONS% -jar "%jar%" %*
exit /b %errorlevel%
